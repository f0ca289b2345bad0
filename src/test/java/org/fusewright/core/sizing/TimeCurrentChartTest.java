package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.catalog.TimeCurrent;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.sizing.TimeCurrentChart.Demand;
import org.fusewright.core.sizing.TimeCurrentChart.Endurance;
import org.fusewright.core.sizing.TimeCurrentChart.Guard;
import org.fusewright.core.sizing.TimeCurrentChart.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;

class TimeCurrentChartTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    /** 1 mm2 that survives 10,000 A2s; a start of 26 A for 0.2 s; 5 A for good. */
    private static TimeCurrentChart chart(Device device, double ambientC, double farA, double atA) {
        return TimeCurrentChart.of(
                new Guard(device, new Celsius(ambientC)),
                new Demand(new StartUp(List.of(new StartUp.Step(26, 0.2)), 26), 5),
                new Endurance(
                        "pump/out, 1 mm2", 150, 150, currentA -> 10_000 / (currentA * currentA)),
                new ShortCircuitWithstand.Span(farA, atA));
    }

    private static Device tenAmps(DeviceKind kind) {
        return switch (kind) {
            case FUSE -> TestStock.fuse(10);
            case MANUAL_RESET -> TestStock.manualReset(10);
            case AUTO_RESET -> TestStock.autoReset(10);
        };
    }

    private SizedCircuit size(String id) {
        return Sizer.size(job.resolve(STOCK)).circuits().stream()
                .filter(circuit -> circuit.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private TimeCurrentChart chartOf(String id) {
        return size(id).study().orElseThrow().chart();
    }

    /** ISO 8820-3 gates of a 10 A mini fuse; those at 135, 350 and 600 % from memory. */
    @ParameterizedTest(name = "{0} A: {1} to {2} s")
    @CsvSource({"13.5, 0.75, 600", "20, 0.15, 5", "35, 0.04, 0.5", "60, 0.02, 0.1"})
    void passesThroughTheGates(double currentA, double earliestS, double latestS) {
        TimeCurrentChart chart = chart(TestStock.fuse(10), 20, 200, 400);

        assertPasses(chart.earliest(), currentA, earliestS);
        assertPasses(chart.latest(), currentA, latestS);
    }

    private static void assertPasses(List<Point> curve, double currentA, double seconds) {
        assertThat(curve)
                .anySatisfy(
                        point -> {
                            assertThat(point.currentA())
                                    .isCloseTo(currentA, Percentage.withPercentage(1e-6));
                            assertThat(point.seconds())
                                    .isCloseTo(seconds, Percentage.withPercentage(1e-5));
                        });
    }

    /** By hand: I2t of 60 A for 0.1 s and for 0.02 s is 360 and 72 A2s, so 1 ms takes 600 A. */
    @Test
    void endsEachCurveAtTheEdgeOfTheAxes() {
        TimeCurrentChart chart = chart(TestStock.fuse(10), 20, 200, 400);

        assertThat(chart.timeS()).isEqualTo(new LogAxis(-3, 3));
        assertThat(chart.currentA()).isEqualTo(new LogAxis(0, 3));
        assertThat(chart.earliest().getLast().currentA()).isCloseTo(268.33, within(0.01));
        assertThat(chart.earliest().getLast().seconds()).isEqualTo(0.001);
        assertThat(chart.latest().getFirst().currentA()).isCloseTo(13.5, within(1e-6));
        assertThat(chart.latest().getFirst().seconds()).isEqualTo(1000);
        assertThat(chart.latest().getLast().currentA()).isCloseTo(600, within(0.01));
    }

    @ParameterizedTest
    @EnumSource(DeviceKind.class)
    void followsTheDeviceBetweenItsPoints(DeviceKind kind) {
        Random random = new Random(20_318);
        for (double ambientC : new double[] {-20, 20, 60, 85}) {
            Device device = tenAmps(kind);
            TimeCurrentBand band = TimeCurrentBand.of(device, new Celsius(ambientC));
            TimeCurrentChart chart = chart(device, ambientC, 200, 2000);
            for (int i = 0; i < 500; i++) {
                double currentA = Math.pow(10, 3 * random.nextDouble());
                assertFollows(chart.earliest(), band::earliestS, currentA);
                assertFollows(chart.latest(), band::latestS, currentA);
            }
        }
    }

    private static void assertFollows(
            List<Point> curve, DoubleUnaryOperator secondsAt, double currentA) {
        for (int i = 1; i < curve.size(); i++) {
            Point left = curve.get(i - 1);
            Point right = curve.get(i);
            if (left.currentA() < currentA && currentA < right.currentA()) {
                double share =
                        Math.log(currentA / left.currentA())
                                / Math.log(right.currentA() / left.currentA());
                double drawnS = left.seconds() * Math.pow(right.seconds() / left.seconds(), share);
                assertThat(drawnS)
                        .as("at %s A", currentA)
                        .isCloseTo(
                                secondsAt.applyAsDouble(currentA), Percentage.withPercentage(0.5));
            }
        }
    }

    /** 10,000 A2s are 100 A for 1 s. */
    @Test
    void drawsWhatTheWireSurvives() {
        TimeCurrentChart chart = chart(TestStock.fuse(10), 20, 200, 400);

        assertThat(chart.damage()).hasSize(2);
        assertThat(chart.damage().getFirst().seconds()).isEqualTo(1000);
        assertThat(chart.damage().getFirst().currentA()).isCloseTo(3.1623, within(1e-3));
        assertThat(chart.damage().getLast().currentA()).isCloseTo(1000, within(1e-6));
        assertThat(chart.damage().getLast().seconds()).isCloseTo(0.01, within(1e-6));
    }

    @Test
    void drawsAWireThatHoldsForGoodAsAnUprightLine() {
        TimeCurrentChart chart =
                TimeCurrentChart.of(
                        new Guard(TestStock.fuse(10), new Celsius(20)),
                        new Demand(new StartUp(List.of(), 5), 5),
                        new Endurance(
                                "a",
                                150,
                                150,
                                currentA ->
                                        currentA < 30
                                                ? Double.POSITIVE_INFINITY
                                                : 10_000 / (currentA * currentA)),
                        new ShortCircuitWithstand.Span(200, 400));

        assertThat(chart.damage().getFirst().seconds()).isEqualTo(1000);
        assertThat(chart.damage().getFirst().currentA()).isCloseTo(30, within(0.05));
        assertThat(chart.damage())
                .filteredOn(point -> point.seconds() > 10)
                .allSatisfy(p -> assertThat(p.currentA()).isCloseTo(30, within(0.05)));
    }

    @Test
    void drawsEachStartAndThenTheRunningCurrent() {
        TimeCurrentChart chart = chart(TestStock.fuse(10), 20, 200, 400);

        assertThat(chart.starts()).containsExactly(new Point(26, 0.2));
        assertThat(chart.demand())
                .containsExactly(
                        new Point(26, 0.001),
                        new Point(26, 0.2),
                        new Point(5, 0.2),
                        new Point(5, 1000));
    }

    @Test
    void outlinesWhereTheDeviceMayOpen() {
        List<Point> outline = chart(TestStock.autoReset(10), 20, 200, 2000).band();

        assertThat(outline.getFirst()).isEqualTo(outline.getLast());
        assertThat(outline).contains(new Point(10_000, 0.001));
        assertPasses(outline, 35, 0.08);
        assertPasses(outline, 35, 1);
    }

    @Test
    void describesWhatItShows() {
        // 26 A at 20 C lie between 200 % (0.15 s) and 350 % (0.04 s): 0.15 (1.3)^-2.362 = 0.0807 s.
        // 10,000 A2s beside 20 A for 5 s = 2,000 A2s and 13.5 A for 600 s = 109,350 A2s.
        assertThat(chart(TestStock.fuse(10), 20, 200, 400).description().english())
                .isEqualTo(
                        "The 10 A fuse opens between 750 ms and 600 s at 13.5 A."
                                + " The loads run at 5 A, which the device holds for good."
                                + " Their start of 26 A for 200 ms reaches into the device's"
                                + " earliest curve, which at that current is 81 ms."
                                + " The weakest lead, pump/out, 1 mm2, would reach 150 C after"
                                + " 100 s at 10 A; the device may never open at that current."
                                + " A dead short at the far end draws 200 A and is cleared in 9 ms;"
                                + " one at the device draws 400 A and is cleared in 2.3 ms.");
        // 5 A through 3 A fuse: 166.7 % lies between 135 % (0.75 s) and 200 % (0.15 s).
        assertThat(chart(TestStock.fuse(3), 20, 200, 400).description().english())
                .contains("The loads run at 5 A, which may open the device after 316 ms.");
        assertThat(chart(TestStock.autoReset(10), 20, 12, 400).description().english())
                .startsWith("The 10 A auto-reset breaker opens between 1 s and 600 s at 13.5 A.")
                .contains("at the far end draws 12 A and may never open the device;");
    }

    /**
     * A 7.5 A fuse at 30 C, 4 A, 0.5 mm2 XLPE as in the hand calculation of the checks: shorts of
     * 107.1 and 386.7 A. With k = 143 (IEC 60364-5-54) the wire survives 5,112 A2s, 5 s at 31.98 A;
     * there the fuse, 26.25 A for 0.5 s and 45 A for 0.1 s, takes 0.2774 s.
     */
    @Test
    void drawsASizedCircuit() {
        job.circuit("c").amps(4);

        TimeCurrentChart chart = chartOf("c");

        assertThat(chart.device().english()).isEqualTo("7.5 A fuse");
        assertThat(chart.atFarEnd().currentA()).isCloseTo(112.42, within(0.05));
        assertThat(chart.atDevice().currentA()).isCloseTo(442.71, within(0.05));
        assertThat(chart.atDevice().clearsS()).isCloseTo(202.5 / 442.71 / 442.71, within(1e-6));
        assertThat(chart.lead()).isEqualTo("c/out, 0.5 mm2");
        // k = 143 (XLPE, IEC 60364-4-43): 143^2 x 0.5^2 = 5,112 A2s.
        assertThat(chart.damage().getLast().seconds() * 1e6).isCloseTo(5112, within(30.0));
        assertThat(chart.starts()).isEmpty();
        // 15 A for 5 s and 26.25 A for 0.5 s: 5 (21.7/15)^-4.115 = 1.095 s. Close by, the wire's
        // time
        // is as many times the fuse's: 29.4 s at 22 A, 1.035 s.
        assertThat(chart.description().english())
                .contains(
                        "The loads run at 4 A, which the device holds for good. They draw no more")
                .contains(
                        "would reach 250 C after 5 s at 32 A; the device has opened after 277 ms");
    }

    @Test
    void drawsOneChartForAllThatHangsOnADevice() {
        job.circuit("c").amps(9);
        job.circuit("b")
                .relayOn("c")
                .runM(6)
                .gauge("0.5 mm2")
                .load(TestJob.load("M", LoadKind.MOTOR, 3, new Inrush(6, 100), Duty.CONTINUOUS));

        assertThat(size("b").study()).isEmpty();
        TimeCurrentChart shared = chartOf("c");
        assertThat(shared.starts()).containsExactly(new Point(27, 0.1));
        assertThat(shared.demand().getLast().currentA()).isCloseTo(12, within(1e-9));
        assertThat(shared.lead()).startsWith("b/");
        // The 6 m to b alone resist with 6 x 37.1 milliohm; the way to c is far shorter.
        assertThat(shared.atFarEnd().currentA()).isLessThan(12.2 / (6 * 0.0371));
    }

    /** All kinds, hot and cold, with shorts that no device notices. */
    @Test
    void keepsEveryPointOnItsAxesAndEveryFigurePlain() {
        Random random = new Random(77);
        for (int i = 0; i < 400; i++) {
            Device device = device(random);
            double atA = Math.pow(10, 4 * random.nextDouble());
            double enduresA2s = Math.pow(10, 1 + 5 * random.nextDouble());
            double holdsA = 30 * random.nextDouble();
            StartUp startUp =
                    random.nextBoolean()
                            ? new StartUp(List.of(), 4)
                            : new StartUp(
                                    List.of(
                                            new StartUp.Step(40, 1e-5 + random.nextDouble()),
                                            new StartUp.Step(9, 1 + 5000 * random.nextDouble())),
                                    40);
            TimeCurrentChart chart =
                    TimeCurrentChart.of(
                            new Guard(device, new Celsius(-40 + 160 * random.nextDouble())),
                            new Demand(startUp, 4),
                            new Endurance(
                                    "a",
                                    150,
                                    150,
                                    currentA ->
                                            currentA < holdsA
                                                    ? Double.POSITIVE_INFINITY
                                                    : enduresA2s / currentA / currentA),
                            new ShortCircuitWithstand.Span(atA * random.nextDouble(), atA));

            Stream.of(
                            chart.earliest(),
                            chart.latest(),
                            chart.demand(),
                            chart.starts(),
                            chart.damage(),
                            chart.band())
                    .flatMap(List::stream)
                    .forEach(
                            point -> {
                                assertOn(chart.currentA(), point.currentA());
                                assertOn(chart.timeS(), point.seconds());
                            });
            assertOn(chart.currentA(), chart.atDevice().currentA());
            assertOn(chart.currentA(), chart.atFarEnd().currentA());
            assertThat(chart.description().english())
                    .contains(chart.device().english(), "run at 4 A", "dead short")
                    .doesNotContain("NaN", "Infinity", "E-", " 0 ms", " 0 s");
        }
    }

    private static Device device(Random random) {
        if (random.nextInt(5) == 0) {
            return TestStock.device(
                    "D",
                    DeviceKind.FUSE,
                    BladeForm.MINI,
                    20,
                    new TimeCurrent(
                            List.of(
                                    new TimeCurrent.Gate(110, 100, Double.POSITIVE_INFINITY),
                                    new TimeCurrent.Gate(200, 0, Double.POSITIVE_INFINITY))),
                    Rerating.NONE);
        }
        return tenAmps(DeviceKind.values()[random.nextInt(DeviceKind.values().length)]);
    }

    private static void assertOn(LogAxis axis, double value) {
        assertThat(axis.share(value)).isBetween(-1e-9, 1 + 1e-9);
    }

    @ParameterizedTest(name = "{0} to {1}: 10^{2} to 10^{3}")
    @CsvSource({"0.02, 5, -2, 1", "1, 10, 0, 1", "3, 3, 0, 1", "10, 10, 1, 2", "0.5, 1000, -1, 3"})
    void takesWholeDecades(double least, double most, int from, int to) {
        assertThat(LogAxis.covering(least, most)).isEqualTo(new LogAxis(from, to));
    }

    @Test
    void labelsDecadesAsPlainNumbers() {
        LogAxis axis = new LogAxis(-3, 4);

        assertThat(axis.labelAt(-3)).isEqualTo("0.001");
        assertThat(axis.labelAt(0)).isEqualTo("1");
        assertThat(axis.labelAt(4)).isEqualTo("10000");
        assertThat(axis.share(0.001)).isEqualTo(0);
        assertThat(axis.share(10_000)).isEqualTo(1);
    }
}
