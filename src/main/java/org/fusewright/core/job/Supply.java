package org.fusewright.core.job;

import java.util.OptionalDouble;

/**
 * The machine's supply.
 *
 * @param nominalV 6, 12 or 24; voltage drops are shares of it
 * @param engineOffV battery voltage with the engine off
 * @param chargingV voltage while charging
 * @param chargingOutputA what the charging system delivers, when known
 */
public record Supply(
        double nominalV,
        double engineOffV,
        double chargingV,
        double batteryResistanceMilliohm,
        OptionalDouble chargingOutputA) {

    public Supply {
        if (!(engineOffV > 0) || !(chargingV >= engineOffV) || !(batteryResistanceMilliohm > 0)) {
            throw new IllegalArgumentException("the supply is out of range");
        }
    }
}
