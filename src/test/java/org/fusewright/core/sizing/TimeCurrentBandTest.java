package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.catalog.TimeCurrent;
import org.fusewright.core.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;

class TimeCurrentBandTest {

    private static final Celsius ROOM = new Celsius(20);

    private static TimeCurrentBand ofTenAmps(DeviceKind kind, TimeCurrent gates) {
        return TimeCurrentBand.of(
                TestStock.device("D", kind, BladeForm.MINI, 10, gates, Rerating.NONE), ROOM);
    }

    private static TimeCurrentBand miniFuse() {
        return ofTenAmps(DeviceKind.FUSE, TestStock.MINI_FUSE);
    }

    /** ISO 8820-3 medium blades, 10 to 40 A, as the rows below state them; 110 % from memory. */
    private static final TimeCurrent MEDIUM_FUSE =
            TestStock.gates(
                    "100:360000:inf 110:360000:inf 135:0.75:600 160:0.25:50 200:0.15:5"
                            + " 350:0.08:0.5 600:0:0.15");

    /** Whose gates a row of the published table belongs to. */
    private static List<TimeCurrent> curvesOf(String family) {
        return switch (family) {
            case "mini/regular blade, common" -> List.of(TestStock.MINI_FUSE, MEDIUM_FUSE);
            case "mini blade" -> List.of(TestStock.MINI_FUSE);
            case "regular blade 10 A", "regular blade 35-40 A" -> List.of(MEDIUM_FUSE);
            case "high-current blade" -> List.of(TestStock.MAIN_FUSE);
            default -> throw new IllegalArgumentException(family);
        };
    }

    /** ISO 8820-3 gates as datasheets copy them; those of mini fuses from memory. */
    @ParameterizedTest(name = "ISO 8820-3 {0}, {1} %: {2} to {3} s, {4}")
    @CsvFileSource(resources = "/facts/fuse_time_current_gates.csv", numLinesToSkip = 1)
    void opensInsideItsGates(
            String family, double percent, Double earliestS, Double latestS, String status) {
        for (TimeCurrent gates : curvesOf(family)) {
            TimeCurrentBand band = ofTenAmps(DeviceKind.FUSE, gates);
            double currentA = percent / 10;
            if (earliestS == null) {
                assertThat(band.earliestS(currentA)).isLessThan(latestS);
            } else if (percent == 100) {
                // The rating is held; just above it the stated time counts.
                assertThat(band.earliestS(currentA)).isInfinite();
                assertThat(band.earliestS(currentA * (1 + 1e-9)))
                        .isCloseTo(earliestS, Percentage.withPercentage(1e-4));
            } else {
                assertThat(band.earliestS(currentA))
                        .isCloseTo(earliestS, Percentage.withPercentage(1e-6));
            }
            if (latestS == null) {
                assertThat(band.latestS(currentA)).isInfinite();
            } else {
                assertThat(band.latestS(currentA))
                        .isCloseTo(latestS, Percentage.withPercentage(1e-6));
            }
        }
    }

    /** SAE J553 type 3; both points from memory: 135 % within 30 min, 200 % within 60 s. */
    @ParameterizedTest(name = "SAE J553 from memory: {0} % within {1} s")
    @CsvSource({"135, 1800", "200, 60"})
    void tripsABreakerInTheStandardsTime(double percent, double withinS) {
        TimeCurrentBand manual = ofTenAmps(DeviceKind.MANUAL_RESET, TestStock.MANUAL);

        assertThat(manual.earliestS(10)).isInfinite();
        assertThat(manual.latestS(percent / 10)).isLessThanOrEqualTo(withinS);
        assertThat(manual.surelyOpensA(withinS)).isLessThanOrEqualTo(percent / 10);
    }

    @ParameterizedTest(name = "{0} A through a 10 A mini fuse: {1} to {2} s")
    @CsvSource({
        // At a gate, and half way between two of them in logarithms: the root of the product.
        "13.5, 0.75, 600",
        "20, 0.15, 5",
        "16.431677, 0.33541, 54.772",
        "35, 0.04, 0.5",
        "60, 0.02, 0.1",
        // Beyond the last gate I2t stays: 60 A for 0.1 s is 360 A2s, so 600 A take 1 ms.
        "600, 0.0002, 0.001",
    })
    void opensBetweenItsEarliestAndLatest(double currentA, double earliestS, double latestS) {
        assertThat(miniFuse().earliestS(currentA))
                .isCloseTo(earliestS, Percentage.withPercentage(0.01));
        assertThat(miniFuse().latestS(currentA))
                .isCloseTo(latestS, Percentage.withPercentage(0.01));
    }

    @Test
    void holdsItsRatingForGood() {
        assertThat(miniFuse().earliestS(10)).isInfinite();
        assertThat(miniFuse().latestS(10)).isInfinite();
        assertThat(miniFuse().latestS(13)).isInfinite();
        assertThat(miniFuse().earliestS(11)).isCloseTo(360_000, within(1.0));
    }

    @Test
    void takesABreakerTenMillisecondsToOpenItsContacts() {
        TimeCurrentBand manual = ofTenAmps(DeviceKind.MANUAL_RESET, TestStock.MANUAL);

        assertThat(manual.latestS(100)).isCloseTo(0.3, within(1e-9));
        assertThat(manual.latestS(200)).isCloseTo(0.075, within(1e-9));
        assertThat(manual.latestS(5_000)).isEqualTo(0.010);
    }

    @Test
    void givesAnElectronicBreakerNoSpeedBeyondItsLastGate() {
        TimeCurrentBand auto = ofTenAmps(DeviceKind.AUTO_RESET, TestStock.AUTO);

        assertThat(auto.latestS(100)).isCloseTo(0.02, within(1e-9));
        assertThat(auto.latestS(900)).isEqualTo(0.02);
        assertThat(auto.earliestS(900)).isZero();
    }

    @Test
    void opensEarlierInTheHeatAndLaterInTheCold() {
        Device breaker = TestStock.manualReset(10);
        TimeCurrentBand hot = TimeCurrentBand.of(breaker, new Celsius(85));
        TimeCurrentBand room = TimeCurrentBand.of(breaker, new Celsius(25));
        TimeCurrentBand cold = TimeCurrentBand.of(breaker, new Celsius(-20));

        assertThat(hot.earliestS(25)).isLessThan(room.earliestS(25));
        assertThat(cold.earliestS(25)).isGreaterThan(room.earliestS(25));
        assertThat(cold.latestS(25)).isGreaterThan(room.latestS(25));
        assertThat(hot.latestS(25)).isEqualTo(room.latestS(25));
    }

    /** A 40 A blade fuse's printed currents (E50). */
    @ParameterizedTest(name = "40 A blade fuse at {0} C: {1} A")
    @CsvSource({"20, 40", "65, 34", "85, 30", "110, 25", "125, 22"})
    void reratesAFuse(double celsius, double printedA) {
        Device fuse =
                TestStock.device(
                        "D",
                        DeviceKind.FUSE,
                        BladeForm.HIGH_CURRENT,
                        40,
                        TestStock.MAIN_FUSE,
                        TestStock.FUSE_RERATING);

        assertThat(fuse.ratingA() * fuse.rerating().factorAt(new Celsius(celsius)))
                .isCloseTo(printedA, within(1e-9));
    }

    /** Datasheet of a 40 A blade fuse; ECSS-Q-ST-30-11C table 6-17, cermet fuses. */
    @ParameterizedTest(name = "{0}, {1} C: {2} ({3})")
    @CsvFileSource(resources = "/facts/fuse_ambient_rerating.csv", numLinesToSkip = 1)
    void movesItsGatesWithThePublishedRerating(
            String basis, double celsius, double fraction, String status) {
        boolean ecss = fraction == 0.65 || fraction == 0.5;
        Device fuse =
                TestStock.device(
                        "D",
                        DeviceKind.FUSE,
                        BladeForm.HIGH_CURRENT,
                        40,
                        TestStock.MAIN_FUSE,
                        ecss ? ECSS : TestStock.FUSE_RERATING);
        TimeCurrentBand band = TimeCurrentBand.of(fuse, new Celsius(celsius));

        // 200 % of what is left of its rating is held for 2 s, and the whole of it for good.
        assertThat(band.earliestS(2 * 40 * fraction)).isCloseTo(2, Percentage.withPercentage(1e-6));
        assertThat(band.earliestS(40 * fraction * (1 - 1e-9))).isInfinite();
        assertThat(band.latestS(2 * 40)).isCloseTo(50, Percentage.withPercentage(1e-6));
    }

    private static final Rerating ECSS =
            new Rerating(List.of(new Rerating.Point(85, 0.65), new Rerating.Point(110, 0.5)));

    /** E51: 65 % to 85 C and linear to 50 % at 110 C make 56 % at 100 C. */
    @Test
    void reratesBetweenTwoPublishedPoints() {
        assertThat(ECSS.factorAt(new Celsius(20))).isEqualTo(0.65);
        assertThat(ECSS.factorAt(new Celsius(100))).isCloseTo(0.56, within(1e-9));
    }

    @Test
    void findsTheCurrentThatSurelyOpensIt() {
        TimeCurrentBand fuse = miniFuse();

        assertThat(fuse.surelyOpensA(5)).isCloseTo(20, within(1e-9));
        assertThat(fuse.latestS(fuse.surelyOpensA(1))).isCloseTo(1, within(1e-9));
        assertThat(fuse.latestS(fuse.surelyOpensA(0.01))).isCloseTo(0.01, within(1e-9));
    }

    @Test
    void letsTheMostEnergyThroughAtAGateWhenThatLiesBetween() {
        TimeCurrentBand fuse = miniFuse();

        // 20 A for 5 s is 2,000 A2s; 60 A for 0.1 s and all above it 360 A2s.
        assertThat(fuse.letThroughA2s(15, 900)).isCloseTo(2000, within(1e-6));
        assertThat(fuse.letThroughA2s(60, 900)).isCloseTo(360, within(1e-6));
        assertThat(fuse.letThroughA2s(12, 13)).isCloseTo(13 * 13 * 5, within(1e-6));
    }

    @Test
    void opensNoLaterForAHigherCurrent() {
        for (DeviceKind kind : DeviceKind.values()) {
            TimeCurrent gates =
                    switch (kind) {
                        case FUSE -> TestStock.MINI_FUSE;
                        case MANUAL_RESET -> TestStock.MANUAL;
                        case AUTO_RESET -> TestStock.AUTO;
                    };
            TimeCurrentBand band = ofTenAmps(kind, gates);
            for (double currentA = 10; currentA < 3000; currentA *= 1.01) {
                assertThat(band.latestS(currentA * 1.01))
                        .isLessThanOrEqualTo(band.latestS(currentA));
                assertThat(band.earliestS(currentA * 1.01))
                        .isLessThanOrEqualTo(band.earliestS(currentA));
                assertThat(band.earliestS(currentA)).isLessThanOrEqualTo(band.latestS(currentA));
            }
        }
    }

    /** A device with one gate may let 600 A pass for 5 s, just under it, and 0.1 s at it. */
    @Test
    void countsTheCurrentJustUnderAGateThatCutsTheTimeShort() {
        TimeCurrentBand late = ofTenAmps(DeviceKind.FUSE, TestStock.gates("6000:0.02:0.1"));

        assertThat(late.letThroughA2s(100, 900)).isCloseTo(600 * 600 * 5, within(1e-6));
    }

    @Test
    void knowsWhatItIsTooSlowFor() {
        TimeCurrentBand manual = ofTenAmps(DeviceKind.MANUAL_RESET, TestStock.MANUAL);
        TimeCurrentBand auto = ofTenAmps(DeviceKind.AUTO_RESET, TestStock.AUTO);

        assertThat(manual.surelyOpensA(0.010)).isCloseTo(547.72, within(0.01));
        assertThat(manual.surelyOpensA(0.009)).isEqualTo(1000);
        assertThat(auto.surelyOpensA(0.02)).isCloseTo(100, within(1e-9));
        assertThat(auto.surelyOpensA(0.019)).isEqualTo(1000);
        assertThat(auto.surelyOpensA()).isCloseTo(13.5, within(1e-9));
        assertThat(ofTenAmps(DeviceKind.FUSE, TestStock.gates("100:1:inf")).surelyOpensA())
                .isInfinite();
    }

    @Test
    void listsWhereItsCurvesTurn() {
        assertThat(miniFuse().turningPointsA(10, 50))
                .containsExactly(new double[] {11, 13.5, 20, 35}, within(1e-9));
        assertThat(
                        ofTenAmps(DeviceKind.MANUAL_RESET, TestStock.MANUAL)
                                .latestTurningPointsA(30, 900))
                .containsExactly(new double[] {35, 60, 100, 547.72}, within(0.01));
        assertThat(miniFuse().turningPointsA(70, 900)).isEmpty();
        Device hot = TestStock.manualReset(10);
        assertThat(TimeCurrentBand.of(hot, new Celsius(85)).turningPointsA(15, 30))
                .containsExactly(new double[] {15.4, 20, 26.95}, within(1e-9));
    }

    /** In logarithms the middle between any two turning points lies on the line between them. */
    @Test
    void runsStraightBetweenItsTurningPoints() {
        for (Device device :
                List.of(
                        TestStock.fuse(7.5),
                        TestStock.manualReset(7.5),
                        TestStock.autoReset(5),
                        TestStock.mainFuse(BladeForm.MEDIUM, 30))) {
            for (double celsius : new double[] {-20, 20, 70}) {
                TimeCurrentBand band = TimeCurrentBand.of(device, new Celsius(celsius));
                double[] bends = band.turningPointsA(1, 20_000);
                assertThat(bends).hasSizeGreaterThan(3).isSorted().doesNotHaveDuplicates();
                for (int i = 1; i < bends.length; i++) {
                    double fromA = bends[i - 1] * (1 + 1e-9);
                    double toA = bends[i] * (1 - 1e-9);
                    double midA = Math.sqrt(fromA * toA);
                    assertStraight(
                            band.earliestS(fromA), band.earliestS(midA), band.earliestS(toA));
                    assertStraight(band.latestS(fromA), band.latestS(midA), band.latestS(toA));
                }
            }
        }
    }

    private static void assertStraight(double fromS, double midS, double toS) {
        if (Double.isInfinite(fromS) || fromS == 0) {
            assertThat(midS).isEqualTo(fromS);
            assertThat(toS).isEqualTo(fromS);
        } else {
            assertThat(midS * midS).isCloseTo(fromS * toS, Percentage.withPercentage(1e-5));
        }
    }
}
