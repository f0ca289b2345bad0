package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Stream;

class CutListPaperTest {

    static Stream<Kit> kits() {
        return Stream.of(
                        PlannedKits.listSamples(),
                        PlannedKits.listKits(),
                        List.of(SampleKits.small(), SampleKits.large(), SampleKits.empty()))
                .flatMap(List::stream);
    }

    /** A marker is a flag: it says the same on both its halves. */
    @ParameterizedTest
    @MethodSource("kits")
    void printsAMarkerForEachEndOfEachLead(Kit kit) {
        for (Paper sheet : Paper.values()) {
            byte[] pdf = BenchPaper.CUT_LIST.print(kit, OptionalInt.of(1), sheet, Wording.ENGLISH);
            try (PrintedPaper printed = PrintedPaper.of(pdf)) {
                String text = printed.denseText();
                for (WireLine line : kit.wire()) {
                    String wire =
                            PrintedPaper.dense(
                                    line.wire().size().label().replace("mm2", "mm²")
                                            + line.wire().colour());
                    for (KitLead lead : line.leads()) {
                        String id = PrintedPaper.dense(lead.lead().id());
                        String from = PrintedPaper.dense(lead.from());
                        String to = PrintedPaper.dense(lead.to());
                        assertThat(count(text, id + "●" + from + "→" + to + wire)).isEqualTo(2);
                        assertThat(count(text, id + from + "●→" + to + wire)).isEqualTo(2);
                    }
                }
                assertThat(count(text, "●"))
                        .isEqualTo(
                                kit.wire().isEmpty()
                                        ? 0
                                        : 1
                                                + 4
                                                        * kit.wire().stream()
                                                                .mapToInt(
                                                                        line -> line.leads().size())
                                                                .sum());
            }
        }
    }

    private static long count(String text, String part) {
        return Pattern.compile(Pattern.quote(part)).matcher(text).results().count();
    }

    @ParameterizedTest
    @MethodSource("kits")
    void listsEachLeadWithItsCutLength(Kit kit) {
        byte[] pdf = BenchPaper.CUT_LIST.print(kit, OptionalInt.of(1), Paper.A4, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            String text = printed.denseText();
            kit.wire().stream()
                    .flatMap(line -> line.leads().stream())
                    .forEach(
                            lead ->
                                    assertThat(text)
                                            .contains(
                                                    "☐"
                                                            + lead.lead().cut().value()
                                                            + PrintedPaper.dense(
                                                                    lead.lead().id())));
        }
    }
}
