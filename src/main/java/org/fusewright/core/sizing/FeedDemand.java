package org.fusewright.core.sizing;

import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedFeed;

import java.util.List;

/**
 * What one feed serves.
 *
 * @param runningA running currents of everything on it
 * @param largestBranchA largest rating among the devices behind its main device
 * @param strictestDropPercent smallest drop that one of its circuits allows
 */
record FeedDemand(
        ResolvedFeed feed,
        List<Service> services,
        double runningA,
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
}
