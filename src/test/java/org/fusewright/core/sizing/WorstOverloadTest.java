package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.quantity.Amperes;
import org.fusewright.core.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.Random;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;

class WorstOverloadTest {

    private static final Celsius BLOCK = new Celsius(25);
    private static final double HIGHEST_A = 900;

    /** Rises as the square of the current and nears its end by one exponential. */
    private record Exponential(double airC, double kelvinPerA2, double tauS) implements Warming {

        @Override
        public double steadyC(double currentA) {
            return airC + kelvinPerA2 * currentA * currentA;
        }

        @Override
        public double secondsTo(double currentA, double fromC, double toC) {
            throw new UnsupportedOperationException("not asked for");
        }

        @Override
        public double afterC(double currentA, double fromC, double seconds) {
            double endC = steadyC(currentA);
            return endC + (fromC - endC) * Math.exp(-seconds / tauS);
        }
    }

    private static WorstOverload worst(Device device, Warming warming, double startC) {
        return worst(device, warming, startC, HIGHEST_A);
    }

    private static WorstOverload worst(
            Device device, Warming warming, double startC, double highestA) {
        return WorstOverload.of(
                TimeCurrentBand.of(device, BLOCK),
                warming,
                new Celsius(startC),
                new Amperes(highestA));
    }

    /**
     * Solved by hand for a 10 A mini fuse, 600 s at 13.5 A to 5 s at 20 A, slope n = -12.18, and a
     * wire of 0.2 K/A2 and 20 s that starts at air: with y = t/tau the rise is greatest where
     * y/(e^y - 1) = 2/n, y = 2.939: 58.8 s, 16.34 A, 40 + 50.55 C.
     */
    @Test
    void findsTheTopOfTheHump() {
        WorstOverload worst = worst(TestStock.fuse(10), new Exponential(40, 0.2, 20), 40);

        assertThat(worst.conductorC()).isCloseTo(90.55, within(0.2));
        assertThat(worst.currentA()).isCloseTo(16.34, within(0.2));
        assertThat(worst.opensS()).isCloseTo(58.8, within(8.0));
        assertThat(worst.isForGood()).isFalse();
    }

    /** A slow wire: 13.5 A for good, 40 + 0.2 x 13.5 x 13.5 = 76.45 C. */
    @Test
    void countsTheLeastOpeningCurrentForGood() {
        WorstOverload worst = worst(TestStock.fuse(10), new Exponential(40, 0.2, 1e5), 40);

        assertThat(worst.isForGood()).isTrue();
        assertThat(worst.currentA()).isCloseTo(13.5, within(1e-9));
        assertThat(worst.conductorC()).isCloseTo(76.45, within(1e-9));
    }

    /**
     * A wire without heat capacity is hottest at the highest current that is looked at: between two
     * gates (A, s), 20 A; 35 (7/5)^(1/3.61), from 7 s at 35 to 1 s at 60; 35 (8/5)^(1/3.106), from
     * 8 s to 1.5 s; 20 (10/5)^(1/4.115), from 10 s at 20 to 1 s at 35.
     */
    @ParameterizedTest(name = "{0}: 5 s at {1} A")
    @CsvSource({"FUSE, 20", "MAIN, 38.42", "MANUAL, 40.72", "AUTO, 23.67"})
    void endsWhereTheShortRuleTakesOver(String which, double endA) {
        Device device =
                switch (which) {
                    case "FUSE" -> TestStock.fuse(10);
                    case "MAIN" -> TestStock.mainFuse(BladeForm.MEDIUM, 10);
                    case "MANUAL" -> TestStock.manualReset(10);
                    default -> TestStock.autoReset(10);
                };
        WorstOverload worst = worst(device, new Exponential(40, 0.2, 1e-3), 40);

        assertThat(worst.currentA()).isCloseTo(endA, within(0.01));
        assertThat(worst.opensS()).isCloseTo(5, within(1e-6));
        assertThat(worst.conductorC()).isCloseTo(40 + 0.2 * endA * endA, within(0.2));
    }

    @ParameterizedTest(name = "a short draws {0} A: worst {1} A")
    @CsvSource({"9, 9, true", "13.5, 13.5, true", "15, 15, false"})
    void goesNoHigherThanAShortCan(double highestA, double worstA, boolean forGood) {
        WorstOverload worst = worst(TestStock.fuse(10), new Exponential(40, 0.2, 20), 40, highestA);

        assertThat(worst.currentA()).isCloseTo(worstA, within(1e-9));
        assertThat(worst.isForGood()).isEqualTo(forGood);
    }

    @Test
    void answersForADeviceThatNeverSurelyOpens() {
        Device open =
                TestStock.device(
                        "D",
                        DeviceKind.FUSE,
                        BladeForm.MINI,
                        10,
                        TestStock.gates("100:3600:inf"),
                        Rerating.NONE);
        WorstOverload worst = worst(open, new Exponential(40, 0.2, 20), 40, 50);

        assertThat(worst.isForGood()).isTrue();
        assertThat(worst.conductorC()).isCloseTo(40 + 0.2 * 2500, within(1e-9));
    }

    private static Stream<DoubleFunction<Device>> kinds() {
        return Stream.of(
                TestStock::fuse,
                TestStock::manualReset,
                TestStock::autoReset,
                ratingA -> TestStock.mainFuse(BladeForm.HIGH_CURRENT, ratingA),
                ratingA ->
                        TestStock.device(
                                "C",
                                DeviceKind.FUSE,
                                BladeForm.MEDIUM,
                                ratingA,
                                TestStock.gates(
                                        "100:360000:inf 135:0.75:600 160:0.25:50 200:0.15:5"
                                                + " 350:0.08:0.5"),
                                Rerating.NONE));
    }

    /** Against 20,000 currents each: the few that are looked at miss the top by under 0.5 K. */
    @ParameterizedTest
    @MethodSource("kinds")
    void missesLessThanHalfAKelvin(DoubleFunction<Device> kind) {
        double mostMissedK = 0;
        for (double ratingA : new double[] {5, 10, 30}) {
            TimeCurrentBand band = TimeCurrentBand.of(kind.apply(ratingA), BLOCK);
            for (double tauS = 1; tauS < 2000; tauS *= 1.3) {
                // The rating alone heats by 25, 50 and 90 K: up to the most that is ever allowed.
                for (double ratedRiseK : new double[] {25, 50, 90}) {
                    Warming warming = new LumpedWarming(40, ratedRiseK / ratingA / ratingA, tauS);
                    double startC = warming.steadyC(0.6 * ratingA);
                    WorstOverload worst =
                            WorstOverload.of(
                                    band, warming, new Celsius(startC), new Amperes(HIGHEST_A));
                    double denseC = denseC(band, warming, startC);
                    if (denseC < 350) {
                        mostMissedK = Math.max(mostMissedK, denseC - worst.conductorC());
                    }
                }
            }
        }

        assertThat(mostMissedK).isBetween(0.0, 0.5);
    }

    private static double denseC(TimeCurrentBand band, Warming warming, double startC) {
        double fromA = band.surelyOpensA();
        double ratio = Math.pow(Math.min(HIGHEST_A, band.surelyOpensA(5)) / fromA, 1 / 20_000.0);
        double hottestC = warming.steadyC(fromA);
        double currentA = fromA;
        for (int i = 0; i <= 20_000; i++) {
            hottestC = Math.max(hottestC, warming.afterC(currentA, startC, band.latestS(currentA)));
            currentA *= ratio;
        }
        return hottestC;
    }

    /** A bigger device never protects a thinner wire, a thinner wire is never cooler. */
    @ParameterizedTest
    @MethodSource("kinds")
    void neverGetsBetterWithABiggerDeviceOrAThinnerWire(DoubleFunction<Device> kind) {
        Random random = new Random(20);
        for (int i = 0; i < 2_000; i++) {
            double ratingA = 2 + 40 * random.nextDouble();
            double biggerA = ratingA * (1 + random.nextDouble());
            double areaMm2 = Math.exp(Math.log(0.35) + random.nextDouble() * Math.log(40));
            double airC = 20 + 60 * random.nextDouble();
            double loadA = ratingA * random.nextDouble();
            double highestA = 30 + 800 * random.nextDouble();
            Warming wire = LumpedWarming.ofArea(areaMm2, airC);
            Warming thinner = LumpedWarming.ofArea(areaMm2 * (1 - 0.5 * random.nextDouble()), airC);
            double hereC = hottestC(kind.apply(ratingA), wire, loadA, highestA);

            // As exact as the search is.
            double leastC = hereC - 0.01 * (hereC - airC);
            assertThat(hottestC(kind.apply(biggerA), wire, loadA, highestA))
                    .isGreaterThanOrEqualTo(leastC);
            assertThat(hottestC(kind.apply(ratingA), thinner, loadA, highestA))
                    .isGreaterThanOrEqualTo(leastC);
        }
    }

    private static double hottestC(Device device, Warming wire, double loadA, double highestA) {
        return worst(device, wire, wire.steadyC(loadA), highestA).conductorC();
    }
}
