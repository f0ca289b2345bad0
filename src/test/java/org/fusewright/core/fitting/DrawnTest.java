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

    @Nested
    class SparePositions {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1 d2 d3 | 3P 4P | 1 spare; 4P[d1 d2 d3 .]",
                    "d1 d2 d3 | 3P=9 4P=99 | 1 spare; 3P[d1 d2 d3] 3P[. . .]",
                    "d1 d2 d3 d4@rear | 3P=9 4P=11 | 2 spare; 3P[d1 d2 d3] rear:3P[d4 . .]",
                    "d1 d2 d3 d4@rear | 3P=9 4P=11 | 3 spare; 4P[d1 d2 d3 .] rear:3P[d4 . .]",
                    "d1 d2@rear d3@rear | 3P=5 4P=9 | 3 spare; 3P[d1 . .] rear:3P[d2 d3 .]",
                    "d1^30 | 4P | 3 spare; left out: d1",
                })
        void keepsThemFreeOverAllLocations(String task, String expected) {
            assertFits(task, expected);
        }
    }

    @Nested
    class Currents {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1:20A d2:20A d3:20A | 4P:60/-; 4P[d1 d2 d3 .]",
                    "d1:20A d2:20A d3:20.1A | 4P:60/-; 4P[d1 d2 . .] 4P[d3 . . .]",
                    "d1:0.1A d2:0.2A d3:0.3A | 3P:0.6/-; 3P[d1 d2 d3]",
                    "d1:2A d2:2.1A | 3P:4.1/-; 3P[d1 d2 .]",
                    "d1:20A r1:20A>d1 | 4P:39/-; 4P[d1 . . .] 4P[r1-r1 . .]",
                    "d1:10A d2:30A d3:20A d4:20A | 4P:40/-; 4P[d1 d2 . .] 4P[d3 d4 . .]",
                    "d1:25A | 4P:-/20; left out: d1",
                    "d1:25A d2 | 4P:-/20 4Pb=20:-/30; 4Pb[d1 d2 . .]",
                    "d1:25A | 4P:20/-; left out: d1",
                })
        void keepsBlocksWithinTheirLimits(String task, String expected) {
            assertFits(task, expected);
        }
    }

    @Nested
    class Costs {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1 d2 d3 d4 d5 d6 | 3P=5 6P=11; 3P[d1 d2 d3] 3P[d4 d5 d6]",
                    "d1 d2 d3 d4 d5 d6 | 3P=5 6P=10; 6P[d1 d2 d3 d4 d5 d6]",
                    "d1 d2 d3 | 3P=10 4P=9.91+0.1; 3P[d1 d2 d3]",
                    "d1 d2 d3 | 3P=10 4P=9.8+0.1; 4P[d1 d2 d3 .]",
                    "d1 d2 d3 d4 | 3P=5+0.1 3Pb=5+0.3 | 2 spare; 3P[d1 d2 d3] 3P[d4 . .]",
                    "r1 d1 d2 d3 | 4P=5+1 3P=4+0.1; 4P[r1-r1 d1 d2] 3P[d3 . .]",
                })
        void takesTheCheapestThenTheFewest(String task, String expected) {
            assertFits(task, expected);
        }
    }

    @Nested
    class Neighbours {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1 d2 r1>d1 | 4P; 4P[d2 d1 r1-r1]",
                    "d1 r1>d1 | 4P; 4P[. d1 r1-r1]",
                    "d1 d2 d3 d4 r1>d3 r2>d4 | 4P; 4P[d1 d3 r1-r1] 4P[d2 d4 r2-r2]",
                    "d1 d2 d3 r1>d3 | 3P 4P; 4P[d1 d3 r1-r1] 3P[d2 . .]",
                    "d1 r1>d1@rear | 4P; 4P[d1 . . .] rear:4P[r1-r1 . .]",
                })
        void seatsRelaysBesideTheirDevice(String task, String expected) {
            assertFits(task.replace("r1>d1@rear", "r1@rear>d1"), expected);
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1:12A d2:12A d3:2A | 3P:-/20; 3P[d1 d3 d2]",
                    "d1:12A d2:12A | 3P:-/20; 3P[d1 . d2]",
                    "d1:10A d2:10A | 3P:-/20; 3P[d1 d2 .]",
                    "d1:12A d2:12A d3:12A d4:2A | 4P:-/20; 4P[d1 d2 d4 d3]",
                    "d1:12A d2:12A r1:12A>d2 | 4P:-/20; 4P[d1 d2 r1-r1]",
                })
        void keepsHighCurrentsApart(String task, String expected) {
            assertFits(task, expected);
        }
    }

    /** Places that must be: the rest fits around them. */
    @Nested
    class FixedPlaces {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1 d2#left.1 | 4P; left=4P[d2 d1 . .]",
                    "d1#a.3 d2 d3 | 3P 4P; a=3P[d2 d3 d1]",
                    "d1#a.4 d2 d3 | 3P 4P; a=4P[d2 d3 . d1]",
                    "d1#a.1 d2#b.1 | 3P 4P; a=3P[d1 . .] b=3P[d2 . .]",
                    "d1#a d2#a d3#b d4 | 3P; a=3P[d1 d2 d4] b=3P[d3 . .]",
                    "d1#a/4P | 3P 4P; a=4P[d1 . . .]",
                    "d1#a.1 d2#a.3 r1 | 4P; a=4P[d1 . d2 .] 4P[r1-r1 . .]",
                    "d1#a.1 d2#a.2 r1 | 4P; a=4P[d1 d2 r1-r1]",
                    "r1#a.3 d1 d2 | 4P; a=4P[d1 d2 r1-r1]",
                    "r1#a r2#a | 4P; a=4P[r1-r1 r2-r2]",
                    "d1#a.4 r1 | 4P; a=4P[r1-r1 . d1]",
                    "d1#a.1 d2@rear#b.2 | 3P; a=3P[d1 . .] rear:b=3P[. d2 .]",
                    "d1#a.2 | 3P | 2 spare; a=3P[. d1 .]",
                    "d1#a.2 | 3P | 3 spare; a=3P[. d1 .] 3P[. . .]",
                })
        void fitsTheRestAroundThem(String task, String expected) {
            assertFits(task, expected);
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1#a.1 d2#a.1 | 4P; a=4P[d1 d2 . .] released: d2",
                    "r1#a.2 | 4P; 4P[r1-r1 . .] released: r1",
                    "d1#a.2 r1#a.1 | 4P; a=4P[. d1 r1-r1] released: r1",
                    "d1#a.9 | 4P; 4P[d1 . . .] released: d1",
                    "d1:30A#a d2:30A#a d3:30A#a | 4P:60/-; a=4P[d1 d2 . .] 4P[d3 . . .] released:"
                            + " d3",
                    "d1#a/3P d2#a/4P | 3P 4P; a=3P[d1 d2 .] released: d2",
                    "r1#a/3P | 3P 4P; 4P[r1-r1 . .] released: r1",
                })
        void saysWhichCannotBe(String task, String expected) {
            FittingTask drawn = Drawing.task(task);
            assertThat(Drawing.draw(Fitter.fit(drawn))).as(task).isEqualTo(expected);
        }
    }

    /** Places that were: kept as far as that costs nothing. */
    @Nested
    class WiredPlaces {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1~a.3 d2~a.1 | 3P; a=3P[d2 . d1]",
                    "d1~a.3 d2~a.1 d3 | 3P; a=3P[d2 d3 d1]",
                    "d1~a.4 d2~a.1 d3~a.2 | 3P=9 4P=11; a=3P[d2 d3 d1] moved: d1",
                    "d1~a.1 d2~b.1 | 3P; a=3P[d1 d2 .] moved: d2",
                    "d1~b.1 d2~b.2 d3~a.1 r1 | 3P 4P; b=3P[d1 d2 .] a=4P[d3 . r1-r1]",
                    "d1~a.1 d2~a.3 r1 | 4P; a=4P[d1 d2 r1-r1] moved: d2",
                    "d1~a.1 d2~a.1 | 4P; a=4P[d1 d2 . .] moved: d2",
                    "d1~a/4P.1 d2~a/4P.2 d3 | 3P=9 4P=11; 3P[d1 d2 d3] moved: d1 d2",
                    "d1~a.2 d2#a.2 | 3P; a=3P[d1 d2 .] moved: d1",
                })
        void movesAsFewAsCanBe(String task, String expected) {
            assertFits(task, expected);
        }
    }

    @Nested
    class Order {

        @ParameterizedTest
        @CsvSource(
                delimiter = ';',
                value = {
                    "d1 d2 d3 d4 d5 d6 d7 | 4P; 4P[d1 d2 d3 d4] 4P[d5 d6 d7 .]",
                    "d1@rear d2 d3@rear | 3P; rear:3P[d1 d3 .] 3P[d2 . .]",
                    "d1 d2^30 d3 d4 | 3P=9 3Pb=20^30; 3Pb[d1 d2 d3] 3P[d4 . .]",
                    "r1 d1 r2 d2 r3 d3 | 4P; 4P[r1-r1 d1 d2] 4P[r2-r2 r3-r3] 4P[d3 . . .]",
                })
        void fillsBlocksFromLeftToRight(String task, String expected) {
            assertFits(task, expected);
        }
    }
}
