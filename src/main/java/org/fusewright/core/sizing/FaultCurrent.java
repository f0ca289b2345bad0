package org.fusewright.core.sizing;

import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Ohms;

/**
 * What a dead short draws: Ohm's law over the battery's resistance and whatever lies between.
 *
 * <p>The highest current decides what a device must break and a lead survive: charging voltage,
 * cold wires, without the resistance of any device. The lowest decides whether a device opens in
 * time: engine-off voltage, warm wires, with every contact and device. The charging system's own
 * share and the arc at the fault are left out.
 */
final class FaultCurrent {

    private FaultCurrent() {}

    static double highestA(Supply supply, Ohms least) {
        return supply.chargingV() / least.value();
    }

    static double lowestA(Supply supply, Ohms most) {
        return supply.engineOffV() / most.value();
    }
}
