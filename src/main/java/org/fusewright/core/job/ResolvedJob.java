package org.fusewright.core.job;

import org.fusewright.core.pricing.Stock;

import java.util.List;

/**
 * A job with every part looked up and the catalog's version fixed: what follows never fails on a
 * look-up.
 */
public record ResolvedJob(
        Job job, Stock stock, List<ResolvedFeed> feeds, List<ResolvedCircuit> circuits) {

    public ResolvedJob {
        feeds = List.copyOf(feeds);
        circuits = List.copyOf(circuits);
    }
}
