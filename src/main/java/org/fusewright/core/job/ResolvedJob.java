package org.fusewright.core.job;

import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;

import java.util.ArrayList;
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

    /** The same machine in another place; round the block it gets as much hotter or colder. */
    public ResolvedJob withAmbient(double ambientC) {
        Surroundings before = job.surroundings();
        double shiftC = ambientC - before.ambient().value();
        return new ResolvedJob(
                job.withSurroundings(
                        new Surroundings(
                                new Celsius(ambientC),
                                new Celsius(before.blockAmbient().value() + shiftC),
                                before.bundledLeads())),
                stock,
                feeds,
                circuits);
    }

    /** The same machine with another run to one circuit's loads. */
    public ResolvedJob withRun(String circuit, double runM) {
        List<ResolvedCircuit> moved = new ArrayList<>(circuits.size());
        for (ResolvedCircuit each : circuits) {
            moved.add(
                    each.id().equals(circuit)
                            ? each.withCircuit(each.circuit().withRunM(runM))
                            : each);
        }
        return new ResolvedJob(
                job.withCircuits(moved.stream().map(ResolvedCircuit::circuit).toList()),
                stock,
                feeds,
                moved);
    }
}
