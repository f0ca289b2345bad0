package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.pricing.Stock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.ArrayList;
import java.util.List;

class DeviceLimitsTest {

    private static final Stock STOCK = TestStock.usual().build();
    private static final double FIRM_SHORT_A = 500;

    private final TestJob job = new TestJob();

    private static List<Device> stocked(DeviceKind... kinds) {
        List<Device> candidates = new ArrayList<>();
        for (DeviceKind kind : kinds) {
            candidates.addAll(STOCK.listBlockDevices(kind));
        }
        return candidates;
    }

    private DeviceLimits limits(
            List<Device> candidates,
            double carriedA,
            boolean momentary,
            StartUp startUp,
            double shortA) {
        return new DeviceLimits(
                new DeviceDemand(candidates, carriedA, momentary, startUp, false),
                job.build().supply(),
                new PlacedStock(STOCK, job.build().surroundings()),
                shortA);
    }

    /** The smallest of a kind that meets all limits. */
    private String smallest(
            double carriedA, boolean momentary, StartUp startUp, double shortA, DeviceKind kind) {
        DeviceLimits limits = limits(stocked(kind), carriedA, momentary, startUp, shortA);
        return stocked(kind).stream()
                .filter(limits::areMetBy)
                .findFirst()
                .map(device -> device.number().value())
                .orElse("none");
    }

    private static StartUp gentle() {
        return StartUp.of(List.of());
    }

    private static StartUp start(double currentA, double seconds) {
        return new StartUp(List.of(new StartUp.Step(currentA, seconds)), currentA);
    }

    @ParameterizedTest(name = "{0} A continuous: {1}; momentary: {2}")
    @CsvSource({"1.6, F2, F2", "1.61, F3, F2", "8, F10, F10", "8.1, F15, F10", "24, F30, F25"})
    void takesTheSmallestThatCarriesTheLoadAtEightyPercent(
            double carriedA, String continuous, String momentary) {
        job.blockAmbientC = 20;

        assertThat(smallest(carriedA, false, gentle(), FIRM_SHORT_A, DeviceKind.FUSE))
                .isEqualTo(continuous);
        assertThat(smallest(carriedA, true, gentle(), FIRM_SHORT_A, DeviceKind.FUSE))
                .isEqualTo(momentary);
    }

    /** 8 A need 10 A x 0.8; at 85 C a fuse has 75 % of its rating left, so 13.4 A are needed. */
    @Test
    void reratesForTheHeatInTheBlock() {
        job.blockAmbientC = 85;

        assertThat(smallest(8, false, gentle(), FIRM_SHORT_A, DeviceKind.FUSE)).isEqualTo("F15");
        assertThat(smallest(8, false, gentle(), FIRM_SHORT_A, DeviceKind.AUTO_RESET))
                .isEqualTo("A10");
    }

    @Test
    void ridesThroughTheStart() {
        job.blockAmbientC = 20;

        // 35 A hold a 10 A fuse for 40 ms at least, not for 41.
        assertThat(smallest(5, false, start(35, 0.039), FIRM_SHORT_A, DeviceKind.FUSE))
                .isEqualTo("F10");
        assertThat(smallest(5, false, start(35, 0.041), FIRM_SHORT_A, DeviceKind.FUSE))
                .isEqualTo("F15");
    }

    @Test
    void mustBreakTheShort() {
        Device weak = weak(stocked(DeviceKind.MANUAL_RESET).getFirst());

        assertThat(limits(List.of(weak), 1, false, gentle(), 799).firstMissed(weak)).isNull();
        assertThat(limits(List.of(weak), 1, false, gentle(), 801).firstMissed(weak))
                .isEqualTo(DeviceLimits.Limit.SHORT);
    }

    /** The same device, but for 800 A only. */
    private static Device weak(Device device) {
        return new Device(
                device.item(),
                device.kind(),
                device.form(),
                device.ratingA(),
                device.maxVoltageV(),
                800,
                device.heightMm(),
                device.milliohm(),
                device.colour(),
                device.gates(),
                device.rerating());
    }

    @Test
    void givesUpTheLastLimitsFirst() {
        List<Device> fuses = stocked(DeviceKind.FUSE);
        DeviceLimits tooMuch = limits(fuses, 80, false, gentle(), FIRM_SHORT_A);
        DeviceLimits tooStrong = limits(fuses, 5, false, gentle(), 5000);

        assertThat(tooMuch.leastBad().number().value()).isEqualTo("F30");
        assertThat(tooMuch.firstMissed(tooMuch.leastBad())).isEqualTo(DeviceLimits.Limit.LOAD);
        assertThat(tooStrong.leastBad().number().value()).isEqualTo("F7.5");
        assertThat(tooStrong.says(tooStrong.leastBad(), DeviceLimits.Limit.SHORT).english())
                .contains("breaks 1000 A");
    }

    @Test
    void keepsAFixedRating() {
        job.circuit("c").amps(9).ratingA(5);

        SizedJob sized = Sizer.size(job.resolve(STOCK));

        assertThat(sized.circuits().getFirst().device().orElseThrow().ratingA()).isEqualTo(5);
        assertThat(sized.circuits().getFirst().why())
                .anySatisfy(why -> assertThat(why.english()).contains("fixed by the job"));
    }

    @Test
    void carriesWhatASharedDeviceFeeds() {
        job.blockAmbientC = 20;
        job.circuit("pump").amps(6).relay("controller");
        job.circuit("fan").amps(7).relayOn("pump");

        SizedJob sized = Sizer.size(job.resolve(STOCK));

        assertThat(sized.circuits().getFirst().carriedA()).isEqualTo(13);
        assertThat(sized.circuits().getFirst().device().orElseThrow().ratingA()).isEqualTo(20);
        assertThat(sized.circuits().getLast().device()).isEmpty();
    }

    @Test
    void countsAMomentaryLoadFullyWhenAllOfThemAre() {
        job.blockAmbientC = 20;
        job.circuit("horn")
                .load(TestJob.load("H", LoadKind.COIL, 8, new Inrush(1, 0), Duty.MOMENTARY));

        double ratingA =
                Sizer.size(job.resolve(STOCK))
                        .circuits()
                        .getFirst()
                        .device()
                        .orElseThrow()
                        .ratingA();

        // A coil draws 8 x 14.2/12 = 9.47 A: 10 A do, and would not at 80 %.
        assertThat(ratingA).isEqualTo(10);
    }
}
