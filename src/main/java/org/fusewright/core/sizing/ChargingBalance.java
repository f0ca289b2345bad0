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
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Continuous load against what the charging system delivers: at most 80 % of it (AC 43.13-1B 11-35,
 * without monitoring). Up to all of it a person must agree; beyond, the battery runs down and it
 * fails. Without a stated output a person must look.
 *
 * <p>At idle, where the output there is stated: all of it, since idling does not last; more runs
 * the battery down meanwhile, and a person must agree (common practice).
 *
 * <p>A charging voltage of less than 13 V on a 14 V system, 26 V on a 28 V one, is what a low bus
 * warning tells of (AC 43.13-1B 11-35 b). The 6 V system has no such figure.
 */
final class ChargingBalance {

    static final double SHARE_OF_OUTPUT = 0.8;

    private static final Basis BASIS = Basis.published("AC 43.13-1B 11-35");
    private static final Basis AT_IDLE = Basis.of("basis.charging-at-idle");
    private static final Basis LOW_BUS = Basis.of("basis.charging-voltage");
    private static final Phrase IDLE = Phrase.of("subject.at-idle");
    private static final Phrase CHARGING_VOLTAGE = Phrase.of("subject.charging-voltage");

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

    static List<Check> list(Collection<CircuitDemand> demands, Supply supply) {
        double loadA = continuousA(demands, supply);
        List<Check> checks = new ArrayList<>(3);
        checks.add(atSpeed(loadA, supply));
        supply.idleOutputA().ifPresent(idleA -> checks.add(atIdle(loadA, idleA)));
        lowBusV(supply).ifPresent(lowV -> checks.add(voltage(supply.chargingV(), lowV)));
        return checks;
    }

    private static Check atSpeed(double loadA, Supply supply) {
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
                    Phrase.of(
                            "charging-balance.not-given",
                            Amount.amps(loadA),
                            Amount.amps(loadA / SHARE_OF_OUTPUT)),
                    BASIS);
        }
        double limitA = SHARE_OF_OUTPUT * outputA.getAsDouble();
        return Check.atMost(
                CheckCode.CHARGING_BALANCE,
                Subject.job(),
                new Measured(loadA, limitA, "A"),
                loadA <= outputA.getAsDouble() ? Verdict.CAUTION : Verdict.FAIL,
                Phrase.of("charging-balance.at-speed", Amount.amps(loadA), Amount.amps(limitA)),
                BASIS);
    }

    private static Check atIdle(double loadA, double outputA) {
        boolean enough = loadA <= outputA;
        return Check.atMost(
                CheckCode.CHARGING_BALANCE,
                Subject.job().detail(IDLE),
                new Measured(loadA, outputA, "A"),
                Verdict.CAUTION,
                Phrase.of(
                        enough ? "charging-balance.idle.enough" : "charging-balance.idle.short",
                        Amount.amps(loadA),
                        Amount.amps(outputA)),
                AT_IDLE);
    }

    /** What a low bus warning stands for, by nominal voltage. */
    private static OptionalDouble lowBusV(Supply supply) {
        return supply.nominalV() == 12
                ? OptionalDouble.of(13)
                : supply.nominalV() == 24 ? OptionalDouble.of(26) : OptionalDouble.empty();
    }

    private static Check voltage(double chargingV, double lowV) {
        boolean charges = chargingV >= lowV;
        return Check.atLeast(
                CheckCode.CHARGING_BALANCE,
                Subject.job().detail(CHARGING_VOLTAGE),
                new Measured(chargingV, lowV, "V"),
                Verdict.CAUTION,
                Phrase.of(
                        charges ? "charging-balance.charges" : "charging-balance.hardly-charges",
                        Amount.volts(chargingV),
                        Amount.volts(lowV)),
                LOW_BUS);
    }
}
