package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.quantity.Metres;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** What all leads of one job share: surroundings, stock for their ends, and how they are cut. */
final class Loom {

    private final Job job;
    private final TerminalChoice terminals;
    private final SpliceChoice splices;
    private final Map<Wire, LaidWire> laid = new IdentityHashMap<>();
    private final Map<List<Wire>, LaidWire[]> laidLists = new IdentityHashMap<>();

    Loom(ResolvedJob resolved) {
        this.job = resolved.job();
        this.terminals = new TerminalChoice(resolved.stock());
        this.splices = new SpliceChoice(resolved.stock());
    }

    Job job() {
        return job;
    }

    SpliceChoice splices() {
        return splices;
    }

    /** Route of a link between two splices of a chain, and of a jumper. */
    double jumperM() {
        return job.choices().jumper().metres();
    }

    double pigtailM() {
        return job.choices().pigtail().metres();
    }

    LaidWire lay(Wire wire) {
        return laid.computeIfAbsent(
                wire, w -> LaidWire.of(w, job.surroundings(), terminals.listFor(w)));
    }

    /** Candidates as they will lie, in the same order. */
    LaidWire[] layAll(List<Wire> wires) {
        return laidLists.computeIfAbsent(
                wires, list -> list.stream().map(this::lay).toArray(LaidWire[]::new));
    }

    LaidLead lead(
            String id,
            LeadRole role,
            LaidWire laidWire,
            double routeM,
            double currentA,
            LeadEnd from,
            LeadEnd to) {
        Lead lead =
                new Lead(
                        id,
                        role,
                        laidWire.wire(),
                        routeM,
                        CutLength.of(new Metres(routeM), job.choices()),
                        currentA,
                        laidWire.dropV(routeM, currentA),
                        from,
                        to);
        return new LaidLead(lead, laidWire);
    }
}
