package org.fusewright.core.order;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.util.OptionalLong;

class CoverPlannerTest {

    @Test
    void costsWhatTheBestOfAllWaysCosts() {
        int bound = 0;
        for (long seed = 0; seed < 400; seed++) {
            CoverTask task = Tasks.small(seed);
            Cover cover = CoverPlanner.plan(task);
            OptionalLong cheapest = EveryWay.cheapest(task);
            if (cheapest.isEmpty()) {
                assertThat(cover.lines()).describedAs("seed " + seed).isEmpty();
                continue;
            }
            assertThat(cover.total().getAmountMinorLong())
                    .describedAs("seed " + seed)
                    .isEqualTo(cheapest.getAsLong());
            assertThat(cover.isOptimal()).describedAs("seed " + seed).isTrue();
        }
    }
}
