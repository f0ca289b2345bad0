package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.SplittableRandom;

/** Other arrangements than the cheapest, drawn and by their properties. */
class AlternativesTest {

    private static Alternatives of(FittingTask task) {
        return new Alternatives(task, Fitter.fit(task));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "d1 d2 d3 d4 d5 d6 | 3P=5 6P=11; 6P[d1 d2 d3 d4 d5 d6]",
                "d1 d2 d3 d4 d5 | 3P=5 6P=11 8P=30; 6P[d1 d2 d3 d4 d5 .]",
            })
    void fitsIntoTheFewestBlocks(String task, String expected) {
        assertThat(Drawing.draw(of(Drawing.task(task)).fewestBlocks().arrangement()))
                .isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "d1 d2 d3 | 3P=5 4P=8 8P=30; 8P[d1 d2 d3 . . . . .]",
                "d1 d2 d3 d4 | 3P=5 4P=8; 4P[d1 d2 d3 d4]",
            })
    void leavesMostPositionsFree(String task, String expected) {
        assertThat(Drawing.draw(of(Drawing.task(task)).mostSpare().arrangement()))
                .isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "d1:9A d2:9A d3:1A d4:1A d5:1A | 3P=5; 10",
                "d1:9A d2:9A d3:9A | 3P=5 6P=99; 27",
            })
    void spreadsTheCurrent(String task, double mostInOneBlockA) {
        FittingTask drawn = Drawing.task(task);
        Arrangement coolest = of(drawn).coolest().arrangement();
        Rules.assertKept(drawn, coolest);
        for (PlacedBlock block : coolest.blocks()) {
            double sumA = 0;
            for (PlacedItem item : block.items()) {
                sumA +=
                        drawn.items().stream()
                                .filter(i -> i.id().equals(item.item()))
                                .mapToDouble(FittingItem::currentA)
                                .sum();
            }
            boolean larger = block.form().positions() > 3;
            assertThat(larger ? 0 : sumA).isLessThanOrEqualTo(mostInOneBlockA + 1);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "d1 d2 d3 d4 d5 r1 | 3P=5 4P=9; 4P[d1 d2 d3 d4] 4P[d5 . r1-r1]",
                "d1 d2 d3 d4 | 3P=5 4P=10; 4P[d1 d2 d3 d4]",
            })
    void fitsIntoOneTypeOfBlock(String task, String expected) {
        assertThat(of(Drawing.task(task)).ofOneBlockType())
                .extracting(one -> Drawing.draw(one.arrangement()))
                .contains(expected);
    }

    @Test
    void saysWhenNoOneTypeDoes() {
        FittingTask task = Drawing.task("d1^30 r1 | 3P^40 4P^20");
        assertThat(of(task).ofOneBlockType()).isEmpty();
    }

    @Test
    void keepTheRulesAndWhatTheyPromise() {
        for (long seed = 0; seed < 150; seed++) {
            SplittableRandom random = new SplittableRandom(40_000 + seed);
            FittingTask task = RandomTasks.task(random, 1 + random.nextInt(14), random.nextInt(3));
            Arrangement cheapest = Fitter.fit(task);
            Alternatives others = new Alternatives(task, cheapest);
            Arrangement fewest = others.fewestBlocks().arrangement();
            Arrangement roomiest = others.mostSpare().arrangement();
            Arrangement coolest = others.coolest().arrangement();
            String as = Drawing.text(task);
            Rules.assertKept(task, roomiest);
            Rules.assertKept(task, coolest);
            assertThat(fewest.blocks().size()).as(as).isLessThanOrEqualTo(cheapest.blocks().size());
            assertThat(roomiest.blocks().size())
                    .as(as)
                    .isLessThanOrEqualTo(cheapest.blocks().size());
            assertThat(coolest.blocks().size())
                    .as(as)
                    .isLessThanOrEqualTo(cheapest.blocks().size());
            assertThat(Alternatives.free(roomiest, task))
                    .as(as)
                    .isGreaterThanOrEqualTo(Alternatives.free(cheapest, task));
            assertThat(Alternatives.busiestA(coolest, task))
                    .as(as)
                    .isLessThanOrEqualTo(Alternatives.busiestA(cheapest, task));
            for (Arrangement other : List.of(fewest, roomiest, coolest)) {
                assertThat(other.costMicros()).as(as).isGreaterThanOrEqualTo(cheapest.costMicros());
            }
        }
    }
}
