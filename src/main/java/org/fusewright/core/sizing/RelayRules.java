package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.quantity.Celsius;

import java.util.Optional;

/**
 * Whether a relay's contact stands its loads and its coil pulls in.
 *
 * <p>Contact: each load's current times the factor of its kind in AC 43.13-1B table 11-4 (rating of
 * a switch over its load), 12 V column up to 14 V of nominal voltage, else the 28 V column. The
 * table has lamps, inductive, resistive and motor loads; drivers with a capacitive start (LED,
 * electronic) count as lamps, a socket as inductive: our own reading. Above the contact's plain
 * rating it fails, between that and the factored one a person must agree, as the table is for
 * switches. Switch makers' own rules ask for more (10 times a lamp's current, 6 times a motor's, as
 * one of them puts it) and are not followed.
 *
 * <p>Coil: the same ampere-turns need more volts through a hot coil, in the proportion of copper's
 * resistance, (234.5 + T)/254.5, with the coil as hot as the block; that goes for pulling in and
 * for letting go. It must pull in with the engine off while everything else runs. At the worst
 * start it surely holds with what it needs to pull in, may let go and chatter with less, and surely
 * lets go at its drop-out voltage. Not covered: the coil's own heat, and what a controller's output
 * loses.
 *
 * <p>Suppression: the coil's voltage peak must be limited. A diode alone makes the contact open
 * slowly, which wears it where its load keeps the current going.
 */
final class RelayRules {

    private static final double TWELVE_VOLT_COLUMN_UP_TO_V = 14;

    private static final Basis CONTACT =
            Basis.published("AC 43.13-1B table 11-4; the contact's rating: catalog data");
    private static final Basis COIL =
            Basis.published(
                    "pull-in voltage: catalog data, moved by copper's resistance (IEC 60028,"
                            + " alpha 0.00393/K)");

    private static final Basis HOLD =
            Basis.published(
                    "pull-in and drop-out voltage: catalog data, moved by copper's resistance (IEC"
                            + " 60028, alpha 0.00393/K); between them a relay may do either (from"
                            + " memory)");
    private static final Basis SUPPRESSION =
            Basis.commonPractice(
                    "suppression at the coil, as a Californian road authority's relay note asks;"
                            + " a diode's slow release: from memory");

    private RelayRules() {}

    /** The contact rating asked for, over the load's running current. */
    static double contactFactor(LoadKind kind, double nominalV) {
        boolean twelve = nominalV <= TWELVE_VOLT_COLUMN_UP_TO_V;
        return switch (kind) {
            case FILAMENT_LAMP, LED, ELECTRONIC -> twelve ? 5 : 8;
            case COIL, SOCKET -> twelve ? 2 : 4;
            case RESISTIVE -> twelve ? 1 : 2;
            case MOTOR, PUMP -> twelve ? 2 : 3;
        };
    }

    static Check contact(Subject subject, Relay relay, CircuitDemand demand, Job job) {
        double neededA = 0;
        for (SingleLoad load : demand.loads()) {
            neededA += load.runningA() * contactFactor(load.load().kind(), job.supply().nominalV());
        }
        String says =
                "These loads draw "
                        + Say.amps(demand.runningA())
                        + " and ask for a contact of "
                        + Say.amps(neededA)
                        + " by their kind; this one has "
                        + Say.amps(relay.contactA())
                        + ".";
        return Check.atMost(
                CheckCode.RELAY_CONTACT,
                subject,
                new Measured(neededA, relay.contactA(), "A"),
                demand.runningA() <= relay.contactA() ? Verdict.CAUTION : Verdict.FAIL,
                says,
                CONTACT);
    }

    /**
     * @param atCoil what reaches the coil
     */
    static Check pullIn(Subject subject, Relay relay, Job job, VoltageLeft.Span atCoil) {
        Celsius block = job.surroundings().blockAmbient();
        double neededV = relay.pullInV() * Conductor.temperatureFactor(block);
        boolean pullsIn = atCoil.runningV() >= neededV;
        String says =
                "With the engine off and everything running "
                        + Say.volts(Math.max(0, atCoil.runningV()))
                        + " reach the coil; at "
                        + Math.round(block.value())
                        + " C it needs "
                        + Say.volts(neededV)
                        + (pullsIn ? " to pull in." : ", so it may stay open.");
        return Check.atLeast(
                CheckCode.RELAY_COIL,
                subject,
                new Measured(Math.max(0, atCoil.runningV()), neededV, "V"),
                Verdict.FAIL,
                says,
                COIL);
    }

    /**
     * Empty when nothing starts that sags the supply.
     *
     * @param atCoil what reaches the coil
     */
    static Optional<Check> hold(Subject subject, Relay relay, Job job, VoltageLeft.Span atCoil) {
        if (atCoil.startV() >= atCoil.runningV()) {
            return Optional.empty();
        }
        double leftV = Math.max(0, atCoil.startV());
        double factor = Conductor.temperatureFactor(job.surroundings().blockAmbient());
        double holdsV = relay.pullInV() * factor;
        double letsGoV = relay.dropOutV() * factor;
        String says =
                "The worst start leaves "
                        + Say.volts(leftV)
                        + " at the coil; with "
                        + Say.volts(holdsV)
                        + " it surely holds"
                        + (leftV >= holdsV
                                ? "."
                                : leftV > letsGoV
                                        ? ", with less it may let go and chatter."
                                        : ", but at " + Say.volts(letsGoV) + " it lets go.");
        return Optional.of(
                Check.atLeast(
                        CheckCode.RELAY_COIL,
                        subject.detail("hold while starting"),
                        new Measured(leftV, holdsV, "V"),
                        leftV > letsGoV ? Verdict.CAUTION : Verdict.FAIL,
                        says,
                        HOLD));
    }

    /**
     * Counts the means that limit the coil's peak and leave the contact quick enough: one or none.
     */
    static Check suppression(Subject subject, Relay relay, CircuitDemand demand) {
        boolean wears = demand.loads().stream().anyMatch(RelayRules::keepsCurrentGoing);
        boolean byController =
                demand.resolved().circuit().relay().orElseThrow().isTriggeredByController();
        boolean serves =
                switch (relay.suppression()) {
                    case "resistor" -> true;
                    case "diode" -> !wears;
                    default -> false;
                };
        String says =
                switch (relay.suppression()) {
                    case "resistor" -> "A resistor across the coil limits its voltage peak.";
                    case "diode" ->
                            "A diode limits the coil's voltage peak and makes the contact open"
                                    + " slowly"
                                    + (wears
                                            ? ", which shortens its life with a motor, pump or"
                                                    + " coil on it; a resistor does not."
                                            : ", which these loads do not mind.");
                    default ->
                            byController
                                    ? "Nothing limits the coil's voltage peak, and that may kill"
                                            + " the controller's output."
                                    : "Nothing limits the coil's voltage peak, which wears the"
                                            + " switch and may upset electronics nearby.";
                };
        return Check.atLeast(
                CheckCode.RELAY_COIL,
                subject.detail("coil suppression"),
                new Measured(serves ? 1 : 0, 1, ""),
                Verdict.CAUTION,
                says,
                SUPPRESSION);
    }

    private static boolean keepsCurrentGoing(SingleLoad load) {
        return switch (load.load().kind()) {
            case MOTOR, PUMP, COIL -> true;
            case RESISTIVE, FILAMENT_LAMP, LED, ELECTRONIC, SOCKET -> false;
        };
    }
}
