package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The same least cost and the same fewest blocks as looking at every arrangement. */
class ExhaustiveTest {

    @Test
    void findsWhatLookingAtEverythingFinds() {
        for (long seed = 0; seed < 4_000; seed++) {
            FittingTask task = RandomTasks.small(seed);
            Arrangement arrangement = Fitter.fit(task);
            Rules.assertKept(task, arrangement);
            String as = "seed " + seed + ": " + Drawing.text(task);
            assertThat(arrangement.unplaced()).as(as).isEqualTo(Exhaustive.listUnplaced(task));
            assertThat(new Exhaustive.Answer(arrangement.costMicros(), arrangement.blocks().size()))
                    .as(as)
                    .isEqualTo(Exhaustive.solve(task));
            assertThat(arrangement.optimal()).as(as).isTrue();
        }
    }
}
