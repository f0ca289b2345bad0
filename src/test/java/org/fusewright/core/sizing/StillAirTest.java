package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Air and natural convection against the tables and an example of a heat-transfer textbook. */
class StillAirTest {

    /**
     * Air at atmospheric pressure, Incropera table A.4: kelvin, kinematic viscosity in 1e-6 m2/s,
     * conductivity in 1e-3 W/(m K), Prandtl number; from memory. Its density at 300 K, 1.1614
     * kg/m3, is that of 1 bar. Of viscosity only the cube root counts for the heat.
     */
    @ParameterizedTest(name = "Incropera table A.4, {0} K, from memory")
    @CsvSource({
        "250, 11.44, 22.3, .720",
        "300, 15.89, 26.3, .707",
        "350, 20.92, 30.0, .700",
        "400, 26.41, 33.8, .690",
        "450, 32.39, 37.3, .686",
        "500, 38.79, 40.7, .684",
        "600, 52.69, 46.9, .685",
        "700, 68.10, 52.4, .695",
        "800, 84.93, 57.3, .709",
        "900, 102.9, 62.0, .720"
    })
    void knowsAir(double kelvin, double viscosity, double conductivity, double prandtl) {
        assertThat(StillAir.kinematicViscosityM2PerS(kelvin) * 1e6 * 1.01325)
                .isCloseTo(viscosity, Percentage.withPercentage(2.5));
        assertThat(StillAir.conductivityWPerMK(kelvin) * 1e3)
                .isCloseTo(conductivity, Percentage.withPercentage(2));
        assertThat(0.70).isCloseTo(prandtl, Percentage.withPercentage(3));
    }

    /**
     * Incropera example 9.4, a bare level steam pipe of 0.1 m at 165 C in a room of 23 C: 325 W/m
     * by convection, 441 W/m by radiation at emissivity 0.85, which is 467 at ours; from memory.
     */
    @Test
    void losesWhatATextbookPipeLoses() {
        assertThat(StillAir.lossWPerM(0.1, 296.15, 142))
                .isCloseTo(325 + 441 * 0.90 / 0.85, Percentage.withPercentage(2));
    }

    /** The same by slow formulas, for thin leads from a cold garage to glowing copper. */
    @ParameterizedTest(name = "{0} mm in {1} C, surface {2} K warmer")
    @CsvSource({
        "1.2, -40, 5",
        "1.2, 30, 75",
        "1.6, 85, 20",
        "2.4, 30, 0.5",
        "3.7, 60, 140",
        "8, 30, 900"
    })
    void losesWhatTheFormulasSay(double outsideMm, double airC, double warmerK) {
        LeadByHand byHand = new LeadByHand(0.2, outsideMm, 100, 105, 5, 1.7e-3);

        assertThat(StillAir.lossWPerM(outsideMm / 1000, airC + 273.15, warmerK))
                .isCloseTo(
                        byHand.surfaceLoss(airC + warmerK, airC), Percentage.withPercentage(0.1));
    }
}
