package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.OptionalInt;
import java.util.stream.Stream;

class DeadShortsSectionTest {

    private static final Figures FIGURES = new Figures(Wording.ENGLISH);

    static Stream<Arguments> kitsOnPapers() {
        return PlannedKits.listKits().stream()
                .flatMap(kit -> Stream.of(Paper.values()).map(paper -> arguments(kit, paper)));
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void tellsBothShortsOfEachCircuit(Kit kit, Paper paper) {
        try (PrintedPaper printed =
                PrintedPaper.of(
                        BenchPaper.KIT_LIST.print(
                                kit, OptionalInt.empty(), paper, Wording.ENGLISH))) {
            String text = printed.denseText();
            for (KitCircuit circuit : kit.circuits()) {
                double breaksA = circuit.sized().device().orElseThrow().interruptingA();
                for (DeadShort told : circuit.sized().study().orElseThrow().deadShorts()) {
                    boolean near = told.place() == DeadShort.Place.AT_DEVICE;
                    assertThat(text)
                            .contains(
                                    PrintedPaper.dense(
                                            circuit.sized().id()
                                                    + (near ? "at device" : "far end")
                                                    + FIGURES.of(told.prospectiveA())
                                                    + FIGURES.of(breaksA)
                                                    + FIGURES.of(told.clearsS().orElseThrow())
                                                    + FIGURES.of(told.letThroughA2s())
                                                    + FIGURES.of(told.survivesA2s())
                                                    + Math.round(told.endC())
                                                    + told.lead()));
                }
            }
            assertThat(text).doesNotContain("NaN", "Infinity");
        }
    }

    @Test
    void leavesTheTableOutWhereThereIsNothingToShort() {
        try (PrintedPaper printed =
                PrintedPaper.of(
                        BenchPaper.KIT_LIST.print(
                                SampleKits.empty(),
                                OptionalInt.empty(),
                                Paper.A4,
                                Wording.ENGLISH))) {
            assertThat(printed.text()).doesNotContain("Dead shorts");
        }
    }
}
