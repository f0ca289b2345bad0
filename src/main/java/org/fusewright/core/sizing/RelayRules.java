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
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

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

    private static final Basis CONTACT = Basis.of("basis.relay-contact");
    private static final Basis COIL = Basis.of("basis.relay-pull-in");
    private static final Basis HOLD = Basis.of("basis.relay-hold");
    private static final Basis SUPPRESSION = Basis.of("basis.relay-suppression");
    private static final Phrase WHILE_STARTING = Phrase.of("subject.hold-while-starting");
    private static final Phrase COIL_SUPPRESSION = Phrase.of("subject.coil-suppression");

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
        Phrase says =
                Phrase.of(
                        "relay-contact.asks",
                        Amount.amps(demand.runningA()),
                        Amount.amps(neededA),
                        Amount.amps(relay.contactA()));
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
        Phrase says =
                Phrase.of(
                        pullsIn ? "relay-coil.pulls-in" : "relay-coil.stays-open",
                        Amount.volts(Math.max(0, atCoil.runningV())),
                        Amount.celsius(block.value()),
                        Amount.volts(neededV));
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
        Amount left = Amount.volts(leftV);
        Amount holds = Amount.volts(holdsV);
        Phrase says =
                leftV >= holdsV
                        ? Phrase.of("relay-coil.holds", left, holds)
                        : leftV > letsGoV
                                ? Phrase.of("relay-coil.chatters", left, holds)
                                : Phrase.of(
                                        "relay-coil.lets-go", left, holds, Amount.volts(letsGoV));
        return Optional.of(
                Check.atLeast(
                        CheckCode.RELAY_COIL,
                        subject.detail(WHILE_STARTING),
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
        Phrase says =
                Phrase.of(
                        switch (relay.suppression()) {
                            case "resistor" -> "relay-coil.resistor";
                            case "diode" ->
                                    wears ? "relay-coil.diode-wears" : "relay-coil.diode-serves";
                            default ->
                                    byController
                                            ? "relay-coil.bare-controller"
                                            : "relay-coil.bare-switch";
                        });
        return Check.atLeast(
                CheckCode.RELAY_COIL,
                subject.detail(COIL_SUPPRESSION),
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
