package org.fusewright.core.sizing;

import org.fusewright.core.job.Load;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Volts;

/**
 * What a load draws at a voltage: I = I0 (V/V0)^n, with the exponent n of its kind ({@link
 * org.fusewright.core.job.LoadKind}).
 *
 * <p>For every kind the current rises or falls all the way with the voltage, so the worst over the
 * supply's range lies at one of its ends: engine off, or charging. Worst currents are then simply
 * added, although a heater and a converter have theirs at opposite ends: what stands on paper adds
 * up, and errs on the safe side.
 */
final class RunningCurrent {

    private RunningCurrent() {}

    /** The current of one such load, in amperes. */
    static double atA(Load load, Volts supply) {
        double exponent = load.kind().exponent();
        return exponent == 0
                ? load.ratedA()
                : load.ratedA() * Math.pow(supply.value() / load.ratedV(), exponent);
    }

    /** The most that one such load draws between engine-off and charging voltage, in amperes. */
    static double worstA(Load load, Supply supply) {
        return Math.max(
                atA(load, new Volts(supply.engineOffV())),
                atA(load, new Volts(supply.chargingV())));
    }
}
