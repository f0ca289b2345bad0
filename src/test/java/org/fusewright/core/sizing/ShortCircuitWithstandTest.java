package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShortCircuitWithstandTest {

    /** IEC 60364-4-43 and 60364-5-54; constants as published, rounded k from memory. */
    @ParameterizedTest(name = "IEC 60364-4-43, {0}: {1} to {2} C, k = {4}")
    @CsvFileSource(resources = "/facts/adiabatic_k_copper.csv", numLinesToSkip = 1)
    void matchesThePublishedConstants(
            String insulation, double startC, double endC, double computed, Double rounded) {
        double ours = ShortCircuitWithstand.k(startC, endC);

        assertThat(ours).isCloseTo(computed, within(0.06));
        if (rounded != null) {
            assertThat(ours).isCloseTo(rounded, within(0.51));
        }
    }

    /**
     * IEC 60949: K = 226 for copper, so PVC from 70 to 160 C has 226 sqrt(ln(394.5/304.5)) = 115.
     */
    @Test
    void agreesWithTheCableStandard() {
        assertThat(ShortCircuitWithstand.k(70, 160)).isCloseTo(115.0, within(0.3));
    }

    @Test
    void leavesNothingForAConductorThatIsAlreadyTooHot() {
        assertThat(ShortCircuitWithstand.k(160, 160)).isZero();
        assertThat(ShortCircuitWithstand.k(200, 160)).isZero();
    }

    /**
     * A conductor at its class temperature has less room: 226 sqrt(ln(484.5/359.5)) from 125 to 250
     * C, 226 sqrt(ln(394.5/339.5)) from 105 to 160 C.
     */
    @Test
    void startsFromTheConductorsOwnTemperatureWhenThatIsHigher() {
        LaidWire crossLinked = laid(125, "XLPE");
        LaidWire polyvinyl = laid(105, "PVC");

        assertThat(ShortCircuitWithstand.kOf(crossLinked, 0)).isCloseTo(143, within(0.5));
        assertThat(ShortCircuitWithstand.kOf(polyvinyl, 0)).isCloseTo(115, within(0.5));
        assertThat(ShortCircuitWithstand.kOf(laid(125, "unheard of"), 0))
                .isCloseTo(115, within(0.5));
        assertThat(ShortCircuitWithstand.kOf(crossLinked, crossLinked.allowedA()))
                .isCloseTo(123.4, within(0.2));
        assertThat(ShortCircuitWithstand.kOf(polyvinyl, polyvinyl.allowedA()))
                .isCloseTo(87.5, within(0.2));
    }

    /**
     * IEC 60949, K = 226: 1 mm2 from 70 C takes 360 A2s to 304.5 exp(360/51076) - 234.5 = 72.15 C,
     * and from 90 C 20,000 A2s to 324.5 exp(20000/51076) - 234.5 = 245.5 C.
     */
    @Test
    void heatsAsTheCableStandardSays() {
        assertThat(ShortCircuitWithstand.endC(laid(70, "PVC"), 0, 360))
                .isCloseTo(72.15, within(0.02));
        assertThat(ShortCircuitWithstand.endC(laid(90, "XLPE"), 0, 20_000))
                .isCloseTo(245.5, within(0.9));
    }

    /** What a wire just survives takes it to the end temperature of its insulation. */
    @ParameterizedTest(name = "{0} ends at {1} C")
    @CsvSource({"PVC, 160", "XLPE, 250", "EPR, 250", "unheard of, 160"})
    void endsWhereTheInsulationSurvives(String insulation, double endC) {
        LaidWire wire = laid(105, insulation);
        for (double currentA : new double[] {0, 5, wire.allowedA()}) {
            double survivesA2s = ShortCircuitWithstand.survivesA2s(wire, currentA);

            assertThat(ShortCircuitWithstand.endC(wire, currentA, survivesA2s))
                    .isCloseTo(endC, within(1e-6));
        }
    }

    @Test
    void stopsCountingWhereCopperMelts() {
        assertThat(ShortCircuitWithstand.endC(laid(70, "PVC"), 0, 1e12)).isEqualTo(1083);
    }

    /**
     * Onderdonk's melting current, form from memory: I = A sqrt(log10((1083 - Ta)/(234 + Ta) + 1) /
     * (33 t)) with A in circular mils. For 1 mm2 = 1,973.5 cmil that starts at 90 C, I2t = 71,800
     * A2s; our constants are 0.6 % stricter.
     */
    @Test
    void meltsWhereOnderdonkSays() {
        double circularMils = 1973.525;
        double energyA2s =
                circularMils * circularMils * Math.log10((1083.0 - 90) / (234 + 90) + 1) / 33;
        LaidWire wire = laid(90, "XLPE");

        assertThat(energyA2s).isCloseTo(71_800, within(100.0));
        assertThat(ShortCircuitWithstand.endC(wire, 0, energyA2s)).isEqualTo(1083);
        assertThat(ShortCircuitWithstand.endC(wire, 0, 0.985 * energyA2s))
                .isBetween(1040.0, 1083.0);
    }

    /**
     * Preece, 10244 d^1.5 with d in inches (E44; E45 from a forum): the current that melts a bare
     * wire in air for good. Without any loss of heat the same current must melt it in a time that
     * is neither an instant nor long.
     */
    @ParameterizedTest(name = "Preece: {0} in, {1} A")
    @CsvSource({
        "0.0098, 10",
        "0.0156, 20",
        "0.0288, 50",
        "0.0457, 100",
        "0.0725, 200",
        "0.0524, 123"
    })
    void agreesInOrderWithPreece(double inches, double printedA) {
        assertThat(10_244 * Math.pow(inches, 1.5)).isCloseTo(printedA, within(0.7));

        double areaMm2 = Math.PI / 4 * Math.pow(25.4 * inches, 2);
        LaidWire wire = laid(areaMm2, 90, "XLPE");
        double energyIn20S = printedA * printedA * 20;

        assertThat(ShortCircuitWithstand.endC(wire, 0, energyIn20S)).isEqualTo(1083);
        assertThat(ShortCircuitWithstand.endC(wire, 0, energyIn20S / 40)).isLessThan(1083);
    }

    /** A device that is allowed on a wire surely opens well under what melts the bare copper. */
    @ParameterizedTest(name = "{0} mm2 against Preece, 80 d^1.5 (mm; from memory)")
    @ValueSource(doubles = {0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6})
    void leavesRoomBelowPreece(double areaMm2) {
        double fusingA = 80 * Math.pow(2 * Math.sqrt(areaMm2 / Math.PI), 1.5);
        double allowedA = laid(areaMm2, 125, "XLPE").allowedA();

        assertThat(1.35 * allowedA).isLessThan(0.6 * fusingA);
    }

    private static LaidWire laid(double classC, String insulation) {
        return laid(1, classC, insulation);
    }

    private static LaidWire laid(double areaMm2, double classC, String insulation) {
        WireSize size = WireSize.parse("1 mm2").orElseThrow();
        Wire wire =
                new Wire(
                        TestStock.item("W"),
                        TestStock.WIRES,
                        size,
                        new WireColour("RD"),
                        areaMm2,
                        2.1,
                        18.5,
                        classC,
                        insulation);
        return LaidWire.of(
                wire,
                new Surroundings(new Celsius(30), new Celsius(30), 1),
                0,
                TerminalChoice.CavityEnd.NONE);
    }
}
