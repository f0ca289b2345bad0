package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.BagDifference;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.count.CountRecord.Later;
import org.fusewright.core.count.CountRecord.Signature;
import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.ExpectedBag;
import org.fusewright.core.count.ExpectedBag.Sets;
import org.fusewright.core.count.ExpectedLine;
import org.fusewright.core.count.Weighing;
import org.fusewright.core.count.WeighingTerms;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

class CountRecordPaperTest {
    private static final Catalog CATALOG = CatalogFolder.read(Path.of("catalog-sample")).catalog();
    private static final Instant SIGNED = Instant.parse("2026-03-04T05:06:07Z");
    private static final Kit KIT = PlannedKits.quad();

    private static Map<PartNumber, BigDecimal> all(List<ExpectedLine> lines) {
        Map<PartNumber, BigDecimal> found = new LinkedHashMap<>();
        lines.forEach(line -> found.put(line.part(), line.quantity()));
        return found;
    }

    private static CountRecord record(
            Comparison comparison, List<CountRecord.Done> weighings, Optional<Later> later) {
        return new CountRecord(
                12,
                BagDesign.of(KIT, 3),
                comparison,
                Map.of(new PartNumber("OSR-24"), "Sealed relay 24 V"),
                weighings,
                later,
                new Signature("Ada Quill", SIGNED, "one seal by post"));
    }

    static CountRecord complete() {
        List<ExpectedLine> lines = ExpectedBag.of(KIT, CATALOG, Sets.CLOSED);
        return record(Comparison.of(lines, all(lines), List.of()), List.of(), Optional.empty());
    }

    static CountRecord troubled() {
        List<ExpectedLine> lines = ExpectedBag.of(KIT, CATALOG, Sets.CLOSED);
        Map<PartNumber, BigDecimal> found = all(lines);
        ExpectedLine breaker =
                lines.stream()
                        .filter(line -> line.kind() == CountedKind.AUTO_RESET)
                        .findFirst()
                        .orElseThrow();
        double ratingA = ((Device) CATALOG.getPart(breaker.part())).ratingA();
        PartNumber fuse = new PartNumber("PYF-" + (int) ratingA);
        found.merge(breaker.part(), BigDecimal.ONE.negate(), BigDecimal::add);
        found.merge(fuse, BigDecimal.ONE, BigDecimal::add);
        found.put(new PartNumber("OSR-24"), BigDecimal.ONE);
        ExpectedLine relay =
                lines.stream()
                        .filter(line -> line.kind() == CountedKind.RELAY)
                        .findFirst()
                        .orElseThrow();
        found.remove(relay.part());
        Comparison comparison =
                Comparison.of(
                        lines,
                        found,
                        List.of(
                                new AgreedSubstitute(
                                        breaker.part(),
                                        fuse,
                                        "Mini blade fuse",
                                        CountedKind.FUSE,
                                        0.78,
                                        1,
                                        "a fuse of the same rating and blades",
                                        "Bo")));
        Weighing weighing =
                Weighing.judge(
                        comparison.listForScale(),
                        Set.of(),
                        new Weighing.Reading(6, 300),
                        WeighingTerms.usual(0.1));
        List<ExpectedLine> newer = ExpectedBag.of(PlannedKits.equippedQuad(), CATALOG, Sets.CLOSED);
        return record(
                comparison,
                List.of(new CountRecord.Done(weighing, "Cy", SIGNED)),
                Optional.of(new Later(4, Optional.of(BagDifference.between(lines, newer)))));
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void saysWhoFoundTheBagComplete(Paper paper) {
        try (PrintedPaper printed =
                PrintedPaper.of(CountRecordPaper.print(complete(), paper, Wording.ENGLISH))) {
            String text = printed.text();
            assertThat(text)
                    .contains("✔ Complete")
                    .contains("Counted and signed by Ada Quill on 2026-03-04 05:06 UTC")
                    .contains("Count 12 of job TQ-014, revision 3")
                    .contains("one seal by post")
                    .contains("Disconnect the battery first")
                    .doesNotContain("✘")
                    .doesNotContain("To add");
            assertThat(PrintedPaper.dense(text)).contains(KIT.fingerprint());
            for (int page = 1; page <= printed.pages(); page++) {
                assertThat(printed.text(page))
                        .contains("Count record TQ-014, revision 3")
                        .contains(
                                "Fingerprint "
                                        + KitHeading.of("", KIT, OptionalInt.empty())
                                                .shortFingerprint())
                        .contains("Page " + page + " of " + printed.pages());
            }
        }
    }

    @Test
    void saysWhatIsShortWrongReplacedWeighedAndToSendAfter() {
        try (PrintedPaper printed =
                PrintedPaper.of(CountRecordPaper.print(troubled(), Paper.A4, Wording.ENGLISH))) {
            String text = printed.text().replaceAll("\\s+", " ");
            assertThat(text)
                    .contains("✘ Not complete")
                    .contains("1 short")
                    .contains("agreed by Bo")
                    .contains("a fuse of the same rating and blades")
                    .contains("Does not belong in this bag")
                    .contains("OSR-24 Sealed relay 24 V")
                    .contains("✘ Too")
                    .contains("300 g full, 6 g empty")
                    .contains("Counted against revision 3; the job has revision 4")
                    .contains("To add for revision 4")
                    .contains("To take back for revision 4");
        }
    }

    @Test
    void givesTheSameBytesForTheSameRecord() {
        assertThat(CountRecordPaper.print(troubled(), Paper.LETTER, Wording.ENGLISH))
                .isEqualTo(CountRecordPaper.print(troubled(), Paper.LETTER, Wording.ENGLISH));
    }

    @Test
    void printsWhatNobodyCouldRead() {
        BagDesign hostile =
                new BagDesign(
                        SampleKits.HOSTILE, SampleKits.HOSTILE, "", 1, "f".repeat(64), "c", 14);
        CountRecord record =
                new CountRecord(
                        1,
                        hostile,
                        complete().comparison(),
                        Map.of(),
                        List.of(),
                        Optional.of(new Later(2, Optional.empty())),
                        new Signature(SampleKits.HOSTILE, SIGNED, SampleKits.HOSTILE.repeat(20)));
        try (PrintedPaper printed =
                PrintedPaper.of(CountRecordPaper.print(record, Paper.LETTER, Wording.ENGLISH))) {
            assertThat(printed.text()).contains("There is no kit for it as it stands");
        }
    }
}
