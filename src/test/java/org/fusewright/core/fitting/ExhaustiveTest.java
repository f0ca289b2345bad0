package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The same least cost and the same fewest blocks as looking at every arrangement. */
class ExhaustiveTest {

    @Test
    void findsWhatLookingAtEverythingFinds() {
        for (long seed = 0; seed < 4_000; seed++) {
            assertSame("seed " + seed, RandomTasks.small(seed));
        }
    }

    /** More items, so that the search must come back from dead ends and remember them. */
    @Test
    void findsItTooWhereCurrentsDecide() {
        for (long seed = 0; seed < 150; seed++) {
            assertSame("crowded, seed " + seed, RandomTasks.crowded(seed, 11));
        }
    }

    private static void assertSame(String name, FittingTask task) {
        Arrangement arrangement = Fitter.fit(task);
        Rules.assertKept(task, arrangement);
        String as = name + ": " + Drawing.text(task);
        assertThat(arrangement.unplaced()).as(as).isEqualTo(Exhaustive.listUnplaced(task));
        assertThat(new Exhaustive.Answer(arrangement.costMicros(), arrangement.blocks().size()))
                .as(as)
                .isEqualTo(Exhaustive.solve(task));
        assertThat(arrangement.optimal()).as(as).isTrue();
    }
}
