package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;

class FitterTest {

    @Nested
    class Repeated {

        @Test
        void answersTheSameAgain() {
            for (long seed = 0; seed < 300; seed++) {
                FittingTask task = RandomTasks.task(new SplittableRandom(seed), 20, 2);
                assertThat(
                                Fitter.fit(Drawing.task(Drawing.text(task)))
                                        .toString()
                                        .replace("cap", ""))
                        .isEqualTo(Fitter.fit(task).toString().replace("cap", ""));
            }
        }

        @Test
        void costsTheSameInAnyOrderOfItemsAndForms() {
            for (long seed = 0; seed < 300; seed++) {
                FittingTask task = RandomTasks.small(seed);
                List<FittingItem> items = new ArrayList<>(task.items());
                List<BlockForm> forms = new ArrayList<>(task.forms());
                Collections.reverse(items);
                Collections.reverse(forms);
                Arrangement turned =
                        Fitter.fit(new FittingTask(items, forms, task.sparePositions()));
                Arrangement arrangement = Fitter.fit(task);
                assertThat(turned.costMicros())
                        .as(Drawing.text(task))
                        .isEqualTo(arrangement.costMicros());
                assertThat(turned.blocks()).hasSameSizeAs(arrangement.blocks());
            }
        }
    }

    @Nested
    class OutOfSteps {

        @ParameterizedTest
        @ValueSource(longs = {0, 1, 10, 100, 1_000})
        void keepsTheRulesAndAnHonestBound(long steps) {
            int open = 0;
            for (long seed = 0; seed < 1_000; seed++) {
                FittingTask task = RandomTasks.small(seed);
                Arrangement hurried = Fitter.fit(task, Aim.LEAST_COST, steps);
                Rules.assertKept(task, hurried);
                long least = Exhaustive.solve(task).costMicros();
                assertThat(hurried.lowerBoundMicros())
                        .as(Drawing.text(task))
                        .isLessThanOrEqualTo(least);
                assertThat(hurried.costMicros())
                        .as(Drawing.text(task))
                        .isGreaterThanOrEqualTo(least);
                open += hurried.optimal() ? 0 : 1;
            }
            assertThat(open > 0).as("some stay open").isEqualTo(steps < 1_000);
        }

        @Test
        void fitsFourHundredCircuitsThatFightForCurrent() {
            FittingTask task = RandomTasks.crowded(1, 400);
            Arrangement arrangement = Fitter.fit(task);
            Rules.assertKept(task, arrangement);
            assertThat((double) arrangement.lowerBoundMicros() / arrangement.costMicros())
                    .isGreaterThan(0.9);
        }
    }

    @Nested
    class Tasks {

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "d1 d1 | 4P",
                    "d1:100001A | 4P",
                    "d1^1001 | 4P",
                    "d1 | 25P",
                    "d1 | 4P=1000001",
                    "d1 | 4P+10001",
                    "d1 | 4P{1,2}",
                    "d1 | 4P{4}",
                    "d1 | 4P{0}",
                    "d1 | 4P | 1000 spare",
                })
        void rejectsWhatCannotBe(String task) {
            assertThatIllegalArgumentException().isThrownBy(() -> Drawing.task(task));
        }

        /** More forms than a long has bits, none of which another one replaces. */
        @Test
        void fitsAnyNumberOfForms() {
            List<BlockForm> forms = new ArrayList<>();
            for (int f = 0; f < 300; f++) {
                forms.add(
                        Drawing.task("d1 | 4Pf%d=%d^%d".formatted(f, 300 + f, 20 + f))
                                .forms()
                                .getFirst());
            }
            FittingTask task =
                    new FittingTask(Drawing.task("d1^300 d2^20 r1^150 r2 | ").items(), forms, 0);
            Arrangement arrangement = Fitter.fit(task);
            Rules.assertKept(task, arrangement);
            assertThat(Drawing.draw(arrangement)).isEqualTo("4Pf280[d1 d2 r1-r1] 4Pf0[r2-r2 . .]");
            assertThat(arrangement.optimal()).isTrue();
        }

        @Test
        void keepsNothingForNothing() {
            assertThat(Fitter.fit(Drawing.task(" | 4P | 3 spare")))
                    .isEqualTo(
                            new Arrangement(
                                    List.of(), 0, 0, true, List.of(), List.of(), List.of()));
            assertThat(Fitter.fit(Drawing.task("d1 r1 | | 3 spare")).unplaced())
                    .containsExactly("d1", "r1");
        }
    }
}
