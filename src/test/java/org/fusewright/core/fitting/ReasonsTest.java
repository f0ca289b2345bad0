package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/** What looked cheaper, and the rule that rejected it. */
class ReasonsTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "r1 | 3P=9 4P=11; 1x3P RELAY_PAIR",
                "d1 d2 d3 r1 r2 r3 | 3P=9 4P=11; 3x3P RELAY_PAIR",
                "d1^30 | 4P^20 4Pt=13^35; 1x4P CAP_CLEARANCE",
                "d1:25A | 4P=9:-/20 4Pb=20:-/30; 1x4P POSITION_CURRENT",
                "d1:20A d2:20A d3:20A | 4P=9:40/-; 1x4P BLOCK_CURRENT",
                "d1 d2 d3 | 3P=9 4P=11 | 1 spare; 1x3P SPARE_POSITIONS",
                "d1 d2@rear | 3P=9; 1x3P LOCATIONS",
                "d1#a.1 d2#b.1 | 3P=9; 1x3P FIXED_PLACES",
                "d1 d2 d3 | 3P=9 4P=11; ''",
            })
    void nameTheRule(String task, String expected) {
        FittingTask drawn = Drawing.task(task);
        List<Rejected> rejected = Reasons.list(drawn, Fitter.fit(drawn));
        assertThat(rejected.stream().map(ReasonsTest::text).collect(Collectors.joining(", ")))
                .isEqualTo(expected);
    }

    private static String text(Rejected rejected) {
        return rejected.blocks().entrySet().stream()
                        .map(form -> form.getValue() + "x" + form.getKey().block())
                        .collect(Collectors.joining("+"))
                + " "
                + rejected.rule();
    }

    @Test
    void nameOnlyWhatCostsLess() {
        int named = 0;
        for (long seed = 0; seed < 300; seed++) {
            SplittableRandom random = new SplittableRandom(50_000 + seed);
            FittingTask task = RandomTasks.task(random, 1 + random.nextInt(14), random.nextInt(3));
            Arrangement cheapest = Fitter.fit(task);
            for (Rejected rejected : Reasons.list(task, cheapest)) {
                named++;
                assertThat(rejected.costMicros())
                        .as(Drawing.text(task))
                        .isLessThan(cheapest.costMicros());
                assertThat(task.forms()).containsAll(rejected.blocks().keySet());
            }
        }
        assertThat(named).isGreaterThan(300);
    }
}
