package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.pricing.Stock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.stream.LongStream;

/** Against Ohm's and Kirchhoff's laws worked by hand; no standard gives figures for it. */
class VoltageLeftTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    private RemainingVoltage remains(int feed) {
        return Sizer.size(job.resolve(STOCK)).feeds().get(feed).remains().orElseThrow();
    }

    /**
     * 4 A from 12.2 V behind 15 milliohm leave 12.14 V. The feed of {@link
     * SizerChecksTest#agreesWithAHandCalculation} resists with 16.46 (wire) + 3.2 (holder) + 6.67
     * (main device) = 26.33 milliohm: 0.1053 V less.
     */
    @Test
    void agreesWithAHandCalculation() {
        job.circuit("c").amps(4);

        RemainingVoltage left = remains(0);

        assertThat(left.batteryV()).isCloseTo(12.14, within(1e-9));
        assertThat(left.busV()).isCloseTo(12.0347, within(1e-4));
        assertThat(left.busAtStartV()).isEqualTo(left.busV());
        assertThat(left.says().english())
                .isEqualTo(
                        "With the engine off and everything running, 12.14 V remain at the battery"
                                + " and 12.03 V at the end of this feed.");
    }

    /**
     * The motor runs at 4 A and starts at 24: the 20 A on top are 12.2 V / 20 A = 0.61 ohm. The
     * start is solved here as a circuit: v = 12.2 - R (4 + v/0.61), repeated until it stands.
     */
    @Test
    void sagsAsTheCircuitDoesWhenAMotorStarts() {
        motor(4, 6, 100);
        SizedFeed feed = Sizer.size(job.resolve(STOCK)).feeds().getFirst();
        RemainingVoltage left = feed.remains().orElseThrow();
        double pathOhm = (12.2 - left.busV()) / 4;
        double busV = 12.2;
        for (int i = 0; i < 100; i++) {
            busV = 12.2 - pathOhm * (4 + busV / 0.61);
        }

        assertThat(pathOhm).isBetween(0.02, 0.06);
        assertThat(left.busAtStartV()).isCloseTo(busV, within(1e-9));
        assertThat(left.says().english()).contains("the worst start pulls that down to");
    }

    /** From memory: no relay lets go within 5 ms. */
    @ParameterizedTest(name = "{0} ms: sags {1}")
    @CsvSource({"4, false", "5, true", "100, true"})
    void leavesOutTheShortestStarts(double ms, boolean sags) {
        motor(4, 6, ms);

        assertThat(remains(0).busAtStartV() < remains(0).busV()).isEqualTo(sags);
    }

    /** A start on one feed also pulls the other down, but less than its own. */
    @Test
    void sagsOnTheOtherFeedToo() {
        motor(4, 6, 100);
        job.circuit("lamp").amps(2).feed(TestJob.SWITCHED);

        RemainingVoltage own = remains(0);
        RemainingVoltage other = remains(1);

        assertThat(other.batteryV()).isEqualTo(own.batteryV());
        assertThat(other.batteryV()).isCloseTo(12.2 - 6 * 0.015, within(1e-9));
        assertThat(other.busAtStartV()).isLessThan(other.busV());
        assertThat(other.busV() - other.busAtStartV()).isLessThan(own.busV() - own.busAtStartV());
    }

    @Test
    void isEmptyWhereNothingHangs() {
        job.circuit("c").amps(4);

        assertThat(Sizer.size(job.resolve(STOCK)).feeds().get(1).remains()).isEmpty();
    }

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    /** Limits: never above what it comes from, never negative. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void onlyEverFallsOnTheWay(long seed) {
        TestJob random = SizerLimitsTest.randomJob(seed);

        for (SizedFeed feed : Sizer.size(random.resolve(STOCK)).feeds()) {
            feed.remains()
                    .ifPresent(
                            left -> {
                                assertThat(left.batteryV()).isLessThan(random.supply.engineOffV());
                                assertThat(left.busV()).isLessThanOrEqualTo(left.batteryV());
                                assertThat(left.busAtStartV()).isBetween(0.0, left.busV());
                            });
        }
    }

    private void motor(double amps, double multiple, double ms) {
        job.circuit("m")
                .load(
                        TestJob.load(
                                "Motor",
                                LoadKind.MOTOR,
                                amps,
                                new Inrush(multiple, ms),
                                Duty.CONTINUOUS));
    }
}
