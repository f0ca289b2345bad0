package org.fusewright.core.sizing;

import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedFeed;

import java.util.List;

/**
 * What one feed serves.
 *
 * @param diversity running currents of everything on it, and what of them counts
 * @param largestBranchA largest rating among the devices behind its main device
 * @param strictestDropPercent smallest drop that one of its circuits allows
 */
record FeedDemand(
        ResolvedFeed feed,
        List<Service> services,
        Diversity diversity,
        double largestBranchA,
        double strictestDropPercent,
        StartUp startUp) {

    /**
     * One cavity that the feed leads to: a device's feed side, or a relay's terminal 86.
     *
     * @param routeM from the feed's end to the cavity, on top of a pigtail for a device
     */
    record Service(ResolvedCircuit circuit, boolean isTrigger, double currentA, double routeM) {}

    FeedDemand {
        services = List.copyOf(services);
    }

    /** What the feed carries. */
    double runningA() {
        return diversity.drawnA();
    }

    /** By how much the worst start that sags the supply exceeds that. */
    double startsOnTopA() {
        double mostA = runningA();
        for (StartUp.Step step : startUp.steps()) {
            if (step.durationS() >= VoltageLeft.SHORTEST_START_S) {
                mostA = Math.max(mostA, step.currentA());
            }
        }
        return mostA - runningA();
    }
}
