package org.fusewright.core.job;

import java.util.OptionalDouble;

/**
 * The machine's supply.
 *
 * @param nominalV 6, 12 or 24; voltage drops are shares of it
 * @param engineOffV battery voltage with the engine off
 * @param chargingV voltage while charging
 * @param chargingOutputA what the charging system delivers at speed, when known
 * @param idleOutputA what it delivers while the engine idles, when known; never more than at speed
 */
public record Supply(
        double nominalV,
        double engineOffV,
        double chargingV,
        double batteryResistanceMilliohm,
        OptionalDouble chargingOutputA,
        OptionalDouble idleOutputA) {

    public Supply {
        if (!(engineOffV > 0) || !(chargingV >= engineOffV) || !(batteryResistanceMilliohm > 0)) {
            throw new IllegalArgumentException("the supply is out of range");
        }
        if (idleOutputA.orElse(0) > chargingOutputA.orElse(Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the charging output is less than that at idle");
        }
    }

    /** A supply whose output at idle is not known. */
    public Supply(
            double nominalV,
            double engineOffV,
            double chargingV,
            double batteryResistanceMilliohm,
            OptionalDouble chargingOutputA) {
        this(
                nominalV,
                engineOffV,
                chargingV,
                batteryResistanceMilliohm,
                chargingOutputA,
                OptionalDouble.empty());
    }

    public Supply withIdleOutputA(double outputA) {
        return new Supply(
                nominalV,
                engineOffV,
                chargingV,
                batteryResistanceMilliohm,
                chargingOutputA,
                OptionalDouble.of(outputA));
    }
}
