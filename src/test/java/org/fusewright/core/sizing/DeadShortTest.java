package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

class DeadShortTest {

    private static ProtectedLead lead(String id, double areaMm2, String insulation) {
        Wire wire =
                new Wire(
                        TestStock.item("W"),
                        TestStock.WIRES,
                        WireSize.parse("1 mm2").orElseThrow(),
                        new WireColour("RD"),
                        areaMm2,
                        2.1,
                        18.5,
                        insulation.equals("PVC") ? 70 : 90,
                        insulation);
        Celsius ambient = new Celsius(30);
        return new ProtectedLead(
                id,
                LaidWire.of(
                        wire,
                        new Surroundings(ambient, ambient, 1),
                        0,
                        TerminalChoice.CavityEnd.NONE),
                0);
    }

    private static List<DeadShort> shorts(
            Device device, double farA, double nearA, ProtectedLead... leads) {
        return DeadShort.list(
                List.of(leads),
                TimeCurrentBand.of(device, new Celsius(25)),
                new ShortCircuitWithstand.Span(farA, nearA));
    }

    /**
     * A 10 A mini fuse, 1 mm2 of PVC and 2.5 mm2, by hand with k = 115 and K = 226 (IEC 60364-4-43,
     * IEC 60949):
     *
     * <ul>
     *   <li>at the device, 387 A: beyond 600 % I2t stays 60 x 60 x 0.1 = 360 A2s, so 2.40 ms, and
     *       304.5 exp(360/51076) - 234.5 = 72.15 C;
     *   <li>at the far end, 30 A: 5 (30/20)^(ln 0.1/ln 1.75) = 0.943 s, 848.5 A2s, 75.1 C;
     *   <li>the lead survives 115 x 115 = 13,225 A2s.
     * </ul>
     */
    @Test
    void agreesWithAHandCalculation() {
        List<DeadShort> shorts =
                shorts(
                        TestStock.fuse(10),
                        30,
                        387,
                        lead("c/out", 2.5, "PVC"),
                        lead("c/branch-1", 1, "PVC"));

        DeadShort near = shorts.getFirst();
        assertThat(near.place()).isEqualTo(DeadShort.Place.AT_DEVICE);
        assertThat(near.prospectiveA()).isEqualTo(387);
        assertThat(near.clearsS().orElseThrow()).isCloseTo(0.0024037, within(1e-6));
        assertThat(near.letThroughA2s()).isCloseTo(360, within(1e-6));
        assertThat(near.survivesA2s()).isCloseTo(13_225, within(60.0));
        assertThat(near.endC()).isCloseTo(72.15, within(0.02));
        assertThat(near.lead()).isEqualTo("c/branch-1");
        assertThat(near.isSurvived()).isTrue();
        assertThat(near.isBeyondMethod()).isFalse();
        assertThat(near.says().english())
                .isEqualTo(
                        "A dead short right behind the device draws 387 A; the device opens within"
                                + " 2.4 ms, and c/branch-1 reaches 72 C.");

        DeadShort far = shorts.getLast();
        assertThat(far.place().code()).isEqualTo("far-end");
        assertThat(far.clearsS().orElseThrow()).isCloseTo(0.9428, within(1e-4));
        assertThat(far.letThroughA2s()).isCloseTo(848.5, within(0.1));
        assertThat(far.endC()).isCloseTo(75.1, within(0.02));
    }

    /** 14 A take the fuse up to 385 s, 12 A need not open it at all: 5 s are counted, no more. */
    @ParameterizedTest(name = "{0} A, {1} s")
    @CsvSource({"14, 385.3", "12,"})
    void saysWhereTheMethodEnds(double farA, Double clearsS) {
        DeadShort far = shorts(TestStock.fuse(10), farA, 387, lead("c/out", 1, "PVC")).getLast();

        assertThat(far.clearsS().isPresent()).isEqualTo(clearsS != null);
        if (clearsS != null) {
            assertThat(far.clearsS().getAsDouble()).isCloseTo(clearsS, within(0.1));
        }
        assertThat(far.isBeyondMethod()).isTrue();
        assertThat(far.letThroughA2s()).isCloseTo(farA * farA * 5, within(1e-9));
        assertThat(far.says().english()).contains("in the first 5 s, where the method ends.");
        assertThat(far.says().english())
                .contains(clearsS == null ? "need not open at all" : "385.3 s");
    }

    /** An electronic breaker lets 900 A pass for 20 ms: 16,200 A2s through 0.22 mm2. */
    @Test
    void endsWhereCopperMelts() {
        DeadShort near =
                shorts(TestStock.autoReset(10), 300, 900, lead("c/out", 0.22, "XLPE")).getFirst();

        assertThat(near.letThroughA2s()).isCloseTo(16_200, within(1e-6));
        assertThat(near.endC()).isEqualTo(1083);
        assertThat(near.isSurvived()).isFalse();
    }

    @Test
    void refusesWhatIsNoNumber() {
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () ->
                                new DeadShort(
                                        DeadShort.Place.FAR_END,
                                        100,
                                        OptionalDouble.of(Double.POSITIVE_INFINITY),
                                        1,
                                        1,
                                        90,
                                        "c/out"))
                .withMessageContaining("clearsS");
    }

    /** Numbers always; hotter than its insulation survives exactly when I2t is over k2 S2. */
    @Test
    void agreesWithItselfForAnyShort() {
        Random random = new Random(30);
        for (int i = 0; i < 3_000; i++) {
            Device device =
                    switch (i % 3) {
                        case 0 -> TestStock.fuse(2 + 30 * random.nextDouble());
                        case 1 -> TestStock.manualReset(2 + 30 * random.nextDouble());
                        default -> TestStock.autoReset(2 + 30 * random.nextDouble());
                    };
            String insulation = random.nextBoolean() ? "PVC" : "XLPE";
            double farA = Math.exp(7 * random.nextDouble());
            double areaMm2 = 0.2 + random.nextDouble();
            ProtectedLead thin = lead("c/out", areaMm2, insulation);
            ProtectedLead thick = lead("c/out", areaMm2 * 1.5, insulation);
            for (DeadShort one : shorts(device, farA, farA + 500, thin)) {
                assertThat(one.endC() <= (insulation.equals("PVC") ? 160 : 250) + 1e-9)
                        .isEqualTo(one.isSurvived());
            }
            assertThat(shorts(device, farA, 999, thick).getFirst().endC())
                    .isLessThanOrEqualTo(shorts(device, farA, 999, thin).getFirst().endC());
        }
    }
}
