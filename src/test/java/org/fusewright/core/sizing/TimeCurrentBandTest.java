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

    /** ISO 8820-3 gates as datasheets copy them; those of mini fuses from memory. */
    @ParameterizedTest(name = "ISO 8820-3 {0}, {1} %: {2} to {3} s, {4}")
    @CsvFileSource(resources = "/facts/fuse_time_current_gates.csv", numLinesToSkip = 1)
    void opensInsideItsGates(
            String family, double percent, String earliest, String latest, String status) {
        double earliestS = earliest == null ? 0 : Double.parseDouble(earliest);
        double latestS = latest == null ? Double.POSITIVE_INFINITY : Double.parseDouble(latest);
        TimeCurrent gate =
                new TimeCurrent(
                        List.of(
                                new TimeCurrent.Gate(percent / 2, Math.max(1, earliestS * 10), 1e9),
                                new TimeCurrent.Gate(percent, earliestS, latestS)));
        TimeCurrentBand band = ofTenAmps(DeviceKind.FUSE, gate);

        if (earliestS > 0) {
            assertThat(band.earliestS(percent / 10))
                    .isCloseTo(earliestS, Percentage.withPercentage(1e-6));
        }
        if (latestS < 1e9) {
            assertThat(band.latestS(percent / 10))
                    .isCloseTo(latestS, Percentage.withPercentage(1e-6));
        }
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
        assertThat(fuse.letThroughA2s(15, 900, 5)).isCloseTo(2000, within(1e-6));
        assertThat(fuse.letThroughA2s(60, 900, 5)).isCloseTo(360, within(1e-6));
        assertThat(fuse.letThroughA2s(12, 13, 5)).isCloseTo(13 * 13 * 5, within(1e-6));
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
}
