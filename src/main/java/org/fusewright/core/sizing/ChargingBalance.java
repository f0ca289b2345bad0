package org.fusewright.core.sizing;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Volts;

import java.util.Collection;
import java.util.OptionalDouble;

/**
 * Continuous load against what the charging system delivers: at most 80 % of it (AC 43.13-1B 11-35,
 * without monitoring). Up to all of it a person must agree; beyond, the battery runs down and it
 * fails. Without a stated output a person must look. Idle speed is not looked at.
 */
final class ChargingBalance {

    static final double SHARE_OF_OUTPUT = 0.8;

    private static final Basis BASIS = Basis.published("AC 43.13-1B 11-35");

    private ChargingBalance() {}

    /** All continuous loads and relay coils at charging voltage, in amperes. */
    static double continuousA(Collection<CircuitDemand> demands, Supply supply) {
        Volts charging = new Volts(supply.chargingV());
        double sumA = 0;
        for (CircuitDemand demand : demands) {
            for (SingleLoad load : demand.loads()) {
                if (load.load().duty() == Duty.CONTINUOUS) {
                    sumA += RunningCurrent.atA(load.load(), charging);
                }
            }
            sumA += demand.coilA(supply);
        }
        return sumA;
    }

    static Check check(Collection<CircuitDemand> demands, Supply supply) {
        double loadA = continuousA(demands, supply);
        OptionalDouble outputA = supply.chargingOutputA();
        if (outputA.isEmpty()) {
            return new Check(
                    CheckCode.CHARGING_BALANCE,
                    Subject.job(),
                    loadA,
                    loadA,
                    "A",
                    0,
                    Verdict.CAUTION,
                    "The charging output is not given; for "
                            + Say.amps(loadA)
                            + " of continuous load it should be "
                            + Say.amps(loadA / SHARE_OF_OUTPUT)
                            + " or more.",
                    BASIS);
        }
        double limitA = SHARE_OF_OUTPUT * outputA.getAsDouble();
        return Check.atMost(
                CheckCode.CHARGING_BALANCE,
                Subject.job(),
                new Measured(loadA, limitA, "A"),
                loadA <= outputA.getAsDouble() ? Verdict.CAUTION : Verdict.FAIL,
                Say.amps(loadA)
                        + " of continuous load against "
                        + Say.amps(limitA)
                        + ", 80 % of the charging output.",
                BASIS);
    }
}
