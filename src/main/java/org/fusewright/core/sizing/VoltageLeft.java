package org.fusewright.core.sizing;

import org.fusewright.core.job.Supply;
import org.fusewright.core.sizing.FeedPlan.Outlet;

import java.util.Collection;

/**
 * How far the voltage sags with the engine off. The battery is a source behind a resistance, and
 * what every feed carries runs at once, each current the worst over the supply's range: what
 * remains in truth is rather more.
 *
 * <p>At a start what is drawn on top of the running current is taken as a resistance, since a cold
 * filament, a standing motor and an empty capacitor are: the lower the voltage sags, the less they
 * draw. One feed starts at a time. Starts shorter than 5 ms are left out: capacitors in the loads
 * bridge them, and no relay lets go so fast (from memory). The starter motor is not looked at.
 */
final class VoltageLeft {

    static final double SHORTEST_START_S = 0.005;

    /** The voltage at some place while everything runs, and at the worst start. */
    record Span(double runningV, double startV) {

        Span minus(double lostV) {
            return new Span(runningV - lostV, startV - lostV);
        }
    }

    private final double engineOffV;
    private final double batteryOhm;
    private final double batteryV;
    private final double batteryAtStartV;

    private VoltageLeft(Supply supply, Collection<FeedPlan> feeds) {
        this.engineOffV = supply.engineOffV();
        this.batteryOhm = supply.batteryResistanceMilliohm() / 1000;
        double runningA = 0;
        for (FeedPlan feed : feeds) {
            runningA += feed.demand().runningA();
        }
        this.batteryV = engineOffV - runningA * batteryOhm;
        double lowestV = batteryV;
        for (FeedPlan feed : feeds) {
            double startingA = ownStartV(feed) * feed.demand().startsOnTopA() / engineOffV;
            lowestV = Math.min(lowestV, batteryV - startingA * batteryOhm);
        }
        this.batteryAtStartV = lowestV;
    }

    static VoltageLeft of(Supply supply, Collection<FeedPlan> feeds) {
        return new VoltageLeft(supply, feeds);
    }

    /** At the battery, where a controller takes its current from. */
    Span atBattery() {
        return new Span(batteryV, batteryAtStartV);
    }

    /** At the end of a feed's main lead. */
    Span atBus(FeedPlan feed) {
        double lostV = feed.limb().dropV();
        return new Span(batteryV - lostV, Math.min(ownStartV(feed), batteryAtStartV - lostV));
    }

    /** Where a relay's trigger lead starts. */
    Span atTrigger(FeedPlan feed, Outlet trigger) {
        return atBus(feed).minus(trigger.limb().dropV() - feed.limb().dropV());
    }

    RemainingVoltage remainingOn(FeedPlan feed) {
        Span bus = atBus(feed);
        return new RemainingVoltage(
                Math.max(0, batteryV), Math.max(0, bus.runningV()), Math.max(0, bus.startV()));
    }

    /** At the end of a feed while the worst start on itself lasts. */
    private double ownStartV(FeedPlan feed) {
        double busV = batteryV - feed.limb().dropV();
        double pathOhm = feed.limb().mostOhm();
        return busV / (1 + feed.demand().startsOnTopA() * pathOhm / engineOffV);
    }
}
