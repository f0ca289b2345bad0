package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteLine;
import org.fusewright.core.quote.SampleQuotes;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** No paper for a German reader says anything in English that the bundle has in German. */
class GermanPapersTest {
    private static final Wording GERMAN = new Wording(Language.GERMAN, UnitSystem.METRIC);
    private static final Pattern SLOT = Pattern.compile("\\{\\d\\}");

    /** A short text that could be no id or code of somebody's data. */
    private static final Pattern MEANT_FOR_PEOPLE = Pattern.compile("\\p{Lu}.*\\p{L}.*|\\p{L}+ .*");

    private static final Quote QUOTE =
            SampleQuotes.quad(3, VariantKind.AS_ASKED, VariantKind.FUSES, VariantKind.CHEAPEST);

    static Stream<Arguments> benchPapers() {
        return Stream.of(
                        PlannedKits.listSamples(),
                        PlannedKits.listKits(),
                        List.of(SampleKits.clean(), SampleKits.empty()))
                .flatMap(List::stream)
                .flatMap(
                        kit ->
                                Stream.of(BenchPaper.values())
                                        .map(
                                                paper ->
                                                        Arguments.argumentSet(
                                                                kit.job().reference()
                                                                        + " "
                                                                        + paper.code(),
                                                                kit,
                                                                paper)));
    }

    @ParameterizedTest
    @MethodSource("benchPapers")
    void sayNothingInEnglish(Kit kit, BenchPaper paper) {
        Set<String> typed = new HashSet<>();
        kit.job()
                .circuits()
                .forEach(circuit -> circuit.loads().forEach(load -> typed.add(load.title())));
        assertGerman(paper.print(kit, OptionalInt.of(2), Paper.A4, GERMAN), typed);
    }

    @Test
    void sayNothingInEnglishToCustomersAndSuppliers() {
        Quote newer = SampleQuotes.quad(1, VariantKind.FUSES);
        QuoteChanges changes = QuoteChanges.between(QUOTE, newer);
        Set<String> typed = new HashSet<>(QUOTE.terms());
        typed.addAll(QUOTE.notIncluded());
        assertGerman(QuotePaper.print(QUOTE, Optional.empty(), true, Paper.A4, GERMAN), typed);
        assertGerman(
                QuotePaper.print(newer, Optional.of(changes), false, Paper.LETTER, GERMAN), typed);
        assertGerman(
                PurchaseOrderPaper.print(PurchaseOrderPapersTest.published(), Paper.A4, GERMAN),
                Set.of());
        assertGerman(
                CountRecordPaper.print(CountRecordPaperTest.complete(), Paper.A4, GERMAN),
                Set.of());
        assertGerman(
                CountRecordPaper.print(CountRecordPaperTest.troubled(), Paper.A4, GERMAN),
                Set.of());
    }

    /**
     * @param typed what people said in English, and what stays so
     */
    private static void assertGerman(byte[] pdf, Set<String> typed) {
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            assertThat(listEnglish(printed, typed)).isEmpty();
            assertThat(printed.document().getDocumentCatalog().getLanguage()).isEqualTo("de");
        }
    }

    /** The search above finds English where it is: on an English paper. */
    @Test
    void areToldFromEnglishOnes() {
        byte[] pdf =
                BenchPaper.KIT_LIST.print(
                        PlannedKits.quad(), OptionalInt.of(2), Paper.A4, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            assertThat(listEnglish(printed, Set.of()))
                    .contains(
                            "print.caution.disconnect: Disconnect the battery first.",
                            "print.column.quantity: Quantity",
                            "print.parts.title: Parts",
                            "print.chart.device: the device may open")
                    .hasSizeGreaterThan(50);
        }
    }

    /** Long texts anywhere, short ones where they stand alone. */
    private static Set<String> listEnglish(PrintedPaper printed, Set<String> typed) {
        Set<String> english = new TreeSet<>();
        String text = printed.denseText();
        Set<String> pieces = Set.copyOf(printed.pieces());
        for (String key : Language.ENGLISH.keys()) {
            String german = Language.GERMAN.pattern(key);
            for (String piece : SLOT.split(Language.ENGLISH.pattern(key))) {
                String words = piece.strip();
                boolean shown =
                        words.split(" ").length > 2
                                ? text.contains(PrintedPaper.dense(words))
                                : MEANT_FOR_PEOPLE.matcher(words).matches()
                                        && pieces.contains(words);
                if (shown && !german.contains(words) && !typed.contains(words)) {
                    english.add(key + ": " + words);
                }
            }
        }
        return english;
    }

    static List<Kit> kits() {
        return PlannedKits.listSamples();
    }

    @ParameterizedTest
    @MethodSource("kits")
    void nameEveryPartAndQuantity(Kit kit) {
        String list = dense(BenchPaper.KIT_LIST, kit);
        String labels = dense(BenchPaper.PART_LABELS, kit);
        for (PartLine line : kit.parts()) {
            String number = PrintedPaper.dense(line.part().number().value());
            assertThat(list).contains("☐" + quantity(line) + number);
            assertThat(labels).contains(number);
        }
        kit.wire().stream()
                .flatMap(line -> line.leads().stream())
                .map(KitLead::lead)
                .forEach(
                        lead ->
                                assertThat(list)
                                        .contains(
                                                "☐"
                                                        + lead.cut().value()
                                                        + PrintedPaper.dense(lead.id())));
    }

    /** Metres with at least two decimals, written out by hand: 1.7 becomes "1,70m". */
    private static String quantity(PartLine line) {
        String plain = line.quantity().stripTrailingZeros().toPlainString();
        if (!(line.part() instanceof Wire)) {
            return plain;
        }
        String[] parts = (plain.contains(".") ? plain : plain + ".").split("\\.", -1);
        String decimals = parts[1];
        while (decimals.length() < 2) {
            decimals += "0";
        }
        return parts[0] + "," + decimals + "m";
    }

    private static String dense(BenchPaper paper, Kit kit) {
        try (PrintedPaper printed =
                PrintedPaper.of(paper.print(kit, OptionalInt.of(2), Paper.A4, GERMAN))) {
            return printed.denseText();
        }
    }

    @ParameterizedTest
    @EnumSource(BenchPaper.class)
    void haveAGlyphForEverySign(BenchPaper paper) {
        assertThat(dense(paper, PlannedKits.equippedQuad()))
                .contains("ü")
                .doesNotContain(String.valueOf(PaperFont.SUBSTITUTE));
        assertThat("äöüÄÖÜß„“–…".chars()).allMatch(PaperFont.REGULAR::holds);
        assertThat("äöüÄÖÜß„“–…".chars()).allMatch(PaperFont.BOLD::holds);
    }

    /** As the German decimal sign and dates are; amounts beside those of the English paper. */
    @Test
    void writeAmountsAndDatesAsTheirReaderDoes() {
        try (PrintedPaper printed =
                PrintedPaper.of(
                        QuotePaper.print(QUOTE, Optional.empty(), false, Paper.A4, GERMAN))) {
            String text = printed.denseText();
            assertThat(text).contains("Gültigbiseinschließlich01.04.2026", "vom02.03.2026.");
            for (Variant variant : QUOTE.variants()) {
                for (QuoteLine line : variant.lines()) {
                    assertThat(text)
                            .contains(
                                    line.code(),
                                    line.quantity().toPlainString().replace('.', ','),
                                    line.price().getAmount().toPlainString().replace('.', ','));
                }
                assertThat(text)
                        .contains(
                                "Gesamt"
                                        + variant.total()
                                                .getAmount()
                                                .toPlainString()
                                                .replace('.', ','));
            }
        }
    }

    @Test
    void countInTheReadersUnits() {
        Wording imperial = new Wording(Language.GERMAN, UnitSystem.IMPERIAL);
        Kit kit = PlannedKits.quad();
        try (PrintedPaper printed =
                PrintedPaper.of(
                        BenchPaper.CUT_LIST.print(kit, OptionalInt.of(2), Paper.A4, imperial))) {
            String text = printed.denseText();
            assertThat(text).contains("Zuschnitt,in", "Abisolieren,in").doesNotContain(",mm");
            kit.wire().stream()
                    .flatMap(line -> line.leads().stream())
                    .map(KitLead::lead)
                    .forEach(
                            lead ->
                                    assertThat(text)
                                            .contains(
                                                    "☐"
                                                            + inches(lead.cut().value())
                                                            + PrintedPaper.dense(lead.id())));
        }
    }

    /** International inch (1959): 25.4 mm. */
    private static String inches(long mm) {
        return "%.2f"
                .formatted(mm / 25.4)
                .replaceAll("0*$", "")
                .replaceAll("[.,]$", "")
                .replace('.', ',');
    }
}
