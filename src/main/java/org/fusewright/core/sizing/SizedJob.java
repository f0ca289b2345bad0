package org.fusewright.core.sizing;

import org.fusewright.core.check.Check;

import java.util.List;

/** All circuits and feeds of a job with their parts chosen, and what was checked on the way. */
public record SizedJob(List<SizedCircuit> circuits, List<SizedFeed> feeds, List<Check> checks) {

    public SizedJob {
        circuits = List.copyOf(circuits);
        feeds = List.copyOf(feeds);
        checks = List.copyOf(checks);
    }
}
