package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.sizing.TimeCurrentChart;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

class TimeCurrentSectionTest {

    private static final List<String> LEGEND =
            List.of(
                    "the device may open",
                    "the loads start and run",
                    "the weakest lead is too hot",
                    "dead short at the far end",
                    "dead short at the device");

    static Stream<Arguments> kitsOnPapers() {
        return PlannedKits.listKits().stream()
                .flatMap(kit -> Stream.of(Paper.values()).map(paper -> arguments(kit, paper)));
    }

    /** Two columns stand on the same lines, so a text is looked for in its own column. */
    private static List<String> listColumns(PrintedPaper printed, Paper paper) {
        float middle = paper.width() / 2;
        return IntStream.rangeClosed(1, printed.pages())
                .boxed()
                .flatMap(
                        page ->
                                Stream.of(true, false)
                                        .map(left -> column(printed, page, middle, left)))
                .toList();
    }

    private static String column(PrintedPaper printed, int page, float middle, boolean left) {
        return PrintedPaper.dense(
                PrintedPaper.join(
                        printed.signs().stream()
                                .filter(sign -> sign.page() == page)
                                .filter(sign -> sign.left() < middle == left)
                                .sorted(
                                        Comparator.comparing(PrintedPaper.Sign::baseline)
                                                .thenComparing(PrintedPaper.Sign::left))
                                .toList()));
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void drawsAndTellsEachDevicesChart(Kit kit, Paper paper) {
        try (PrintedPaper printed =
                PrintedPaper.of(
                        BenchPaper.KIT_LIST.print(
                                kit, OptionalInt.empty(), paper, Wording.ENGLISH))) {
            List<String> columns = listColumns(printed, paper);
            int charts = 0;
            for (KitCircuit circuit : kit.circuits()) {
                TimeCurrentChart chart = circuit.sized().study().orElseThrow().chart();
                String title = circuit.sized().resolved().circuit().title();
                assertThat(columns)
                        .anySatisfy(
                                column ->
                                        assertThat(column)
                                                .contains(
                                                        PrintedPaper.dense(
                                                                title + "·" + circuit.sized().id()),
                                                        PrintedPaper.dense(
                                                                chart.description().english())));
                charts++;
            }
            assertThat(count(columns, "Current,A")).isEqualTo(charts);
            assertThat(count(columns, "Time,s")).isEqualTo(charts);
        }
    }

    private static int count(List<String> columns, String words) {
        return columns.stream().mapToInt(column -> column.split(words, -1).length - 1).sum();
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void putsTheLegendOnEachPageWithCharts(Kit kit, Paper paper) {
        try (PrintedPaper printed =
                PrintedPaper.of(
                        BenchPaper.KIT_LIST.print(
                                kit, OptionalInt.empty(), paper, Wording.ENGLISH))) {
            int pages = 0;
            for (int page = 1; page <= printed.pages(); page++) {
                String text = printed.text(page);
                if (text.contains("Current, A")) {
                    assertThat(text).contains(LEGEND).contains("Time-current charts");
                    pages++;
                }
            }
            assertThat(pages).isEqualTo(kit.circuits().size() > 2 ? 4 : 1);
        }
    }

    @Test
    void leavesTheSectionOutWhereThereIsNothingToDraw() {
        try (PrintedPaper printed =
                PrintedPaper.of(
                        BenchPaper.KIT_LIST.print(
                                SampleKits.empty(),
                                OptionalInt.empty(),
                                Paper.A4,
                                Wording.ENGLISH))) {
            assertThat(printed.text()).doesNotContain("Time-current");
        }
    }
}
