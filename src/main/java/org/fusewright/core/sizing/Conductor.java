package org.fusewright.core.sizing;

import org.fusewright.core.quantity.Celsius;

/**
 * Resistance of copper. Annealed copper has 1/58 ohm mm2/m at 20 C (IEC 60028, NBS Handbook 100)
 * and moves with temperature as R(T) = R20 (234.5 + T)/254.5, the form that AC 43.13-1B 11-68 f
 * uses. Real stranded wire has more than the solid copper of its area: the catalog's figure for the
 * wire counts, and the ideal one is the bound that it may not lie under.
 */
final class Conductor {

    /** Resistivity at 20 C in ohm mm2/m. */
    static final double COPPER_OHM_MM2_PER_M = 1 / 58.0;

    private static final double ZERO_RESISTANCE_C = -234.5;
    private static final double STATED_AT_C = 20;

    private Conductor() {}

    /** Resistance of solid annealed copper at 20 C, in milliohms a metre. */
    static double solidMilliohmPerM(double copperMm2) {
        return 1000 * COPPER_OHM_MM2_PER_M / copperMm2;
    }

    /** By how much a resistance stated at 20 C has grown at a temperature. */
    static double temperatureFactor(Celsius temperature) {
        return (temperature.value() - ZERO_RESISTANCE_C) / (STATED_AT_C - ZERO_RESISTANCE_C);
    }
}
