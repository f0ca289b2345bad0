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

import java.util.List;

/**
 * Whether a relay's contact stands its loads and its coil pulls in.
 *
 * <p>Contact: each load's current times the factor of its kind in AC 43.13-1B table 11-4 (rating of
 * a switch over its load), 12 V column up to 14 V of nominal voltage, else the 28 V column. The
 * table has lamps, inductive, resistive and motor loads; drivers with a capacitive start (LED,
 * electronic) count as lamps, a socket as inductive: our own reading. Above the contact's plain
 * rating it fails, between that and the factored one a person must agree, as the table is for
 * switches.
 *
 * <p>Coil: the same ampere-turns need more volts through a hot coil, in the proportion of copper's
 * resistance, (234.5 + T)/254.5, with the coil as hot as the block. Not covered: the coil's own
 * heat, and what a controller's output loses.
 */
final class RelayRules {

    private static final double TWELVE_VOLT_COLUMN_UP_TO_V = 14;

    private static final Basis CONTACT =
            Basis.published("AC 43.13-1B table 11-4; the contact's rating: catalog data");
    private static final Basis COIL =
            Basis.published(
                    "pull-in voltage: catalog data, moved by copper's resistance (IEC 60028,"
                            + " alpha 0.00393/K)");

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
     * @param upstreamDropV what the feed that triggers it has lost already
     * @param coilLeads its trigger and ground lead
     */
    static Check coil(
            Subject subject, Relay relay, Job job, double upstreamDropV, List<LaidLead> coilLeads) {
        double leftV = job.supply().engineOffV() - upstreamDropV;
        for (LaidLead lead : coilLeads) {
            leftV -= lead.lead().dropV();
            leftV -= lead.laid().terminalOhm() * lead.lead().currentA();
        }
        Celsius block = job.surroundings().blockAmbient();
        double neededV = relay.pullInV() * Conductor.temperatureFactor(block);
        boolean pullsIn = leftV >= neededV;
        String says =
                "With the engine off "
                        + Say.volts(leftV)
                        + " reach the coil; at "
                        + Math.round(block.value())
                        + " C it needs "
                        + Say.volts(neededV)
                        + (pullsIn ? " to pull in." : ", so it may stay open.");
        return Check.atLeast(
                CheckCode.RELAY_COIL,
                subject,
                new Measured(Math.max(0, leftV), neededV, "V"),
                Verdict.FAIL,
                says,
                COIL);
    }
}
