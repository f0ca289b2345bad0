package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tasks drawn as text and the arrangement expected, from simple to complex. */
class DrawnTest {

    private static void assertFits(String task, String expected) {
        FittingTask drawn = Drawing.task(task);
        Arrangement arrangement = Fitter.fit(drawn);
        assertThat(Drawing.draw(arrangement)).as(task).isEqualTo(expected);
        Rules.assertKept(drawn, arrangement);
        assertThat(arrangement.optimal()).as(task).isTrue();
    }

    /** What a block takes: common practice, no published source. */
    @Nested
    class FactsOfTheTrade {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1 d2 d3 | 3P; 3P[d1 d2 d3]",
                    "d1 d2 d3 d4 | 4P; 4P[d1 d2 d3 d4]",
                    "d1 d2 r1 | 4P; 4P[d1 d2 r1-r1]",
                    "r1 r2 | 4P; 4P[r1-r1 r2-r2]",
                    "d1 | 3P 4P; 3P[d1 . .]",
                    "d1 d2 d3 r1 | 3P 4P; 4P[d1 d2 r1-r1] 3P[d3 . .]",
                    "d1 r1 r2 r3 | 3P 4P; 4P[d1 . r1-r1] 4P[r2-r2 r3-r3]",
                })
        void fitsDevicesAndRelays(String task, String expected) {
            assertFits(task, expected);
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "r1 | 3P; left out: r1",
                    "d1 r1 | 3P; 3P[d1 . .] left out: r1",
                    "r1 | 3P=1 4P=99; 4P[r1-r1 . .]",
                })
        void keepsRelaysOutOfThreePositions(String task, String expected) {
            assertFits(task, expected);
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1^30 | 4P^20; left out: d1",
                    "d1^30 | 4P^20 4Ptall=13^35; 4Ptall[d1 . . .]",
                    "d1 d2^30 d3 d4 d5 | 4P 4Ptall=13^35; 4Ptall[d1 d2 d3 d4] 4P[d5 . . .]",
                })
        void fitsBreakersUnderTheTallCap(String task, String expected) {
            assertFits(task, expected);
        }
    }
}
