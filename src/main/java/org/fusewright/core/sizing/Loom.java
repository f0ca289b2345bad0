package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Metres;
import org.fusewright.core.quantity.Millimetres;
import org.jspecify.annotations.Nullable;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** What all leads of one job share: surroundings, stock for their ends, and how they are cut. */
final class Loom {

    private final Job job;
    private final Stock stock;
    private final KeptSizes kept;
    private final PlacedStock placed;
    private final Millimetres jumperCut;
    private final Millimetres pigtailCut;
    private final Map<List<Wire>, LaidWire[]> laidLists = new IdentityHashMap<>();
    private final Map<CircuitDemand, LoadPath> paths = new IdentityHashMap<>();

    /**
     * @param placed the job's stock in the job's surroundings
     */
    Loom(ResolvedJob resolved, PlacedStock placed, KeptSizes kept) {
        this.job = resolved.job();
        this.stock = resolved.stock();
        this.placed = placed;
        this.kept = kept;
        this.jumperCut = cut(jumperM());
        this.pigtailCut = cut(pigtailM());
    }

    Job job() {
        return job;
    }

    Stock stock() {
        return stock;
    }

    KeptSizes kept() {
        return kept;
    }

    PlacedStock placed() {
        return placed;
    }

    SpliceChoice splices() {
        return placed.splices();
    }

    /** Route of a link between two splices of a chain, and of a jumper. */
    double jumperM() {
        return job.choices().jumper().metres();
    }

    double pigtailM() {
        return job.choices().pigtail().metres();
    }

    Millimetres jumperCut() {
        return jumperCut;
    }

    Millimetres pigtailCut() {
        return pigtailCut;
    }

    /** What to cut for a lead of this route. */
    Millimetres cut(double routeM) {
        return CutLength.of(new Metres(routeM), job.choices());
    }

    LaidWire lay(Wire wire) {
        return placed.lay(wire);
    }

    LoadPath pathOf(CircuitDemand demand) {
        return paths.computeIfAbsent(demand, circuit -> new LoadPath(this, circuit));
    }

    /** Whether some leads have their wire already. */
    boolean keepsWires() {
        return !kept.wires().isEmpty();
    }

    /** Candidates for one lead as they will lie: the wire that it has already, or all. */
    LaidWire[] layFor(String owner, String lead, List<Wire> wires) {
        @Nullable Wire settled = keepsWires() ? kept.wires().get(owner + lead) : null;
        return settled == null ? layAll(wires) : new LaidWire[] {lay(settled)};
    }

    /** What a lead costs, in millionths of the currency: its cut length, and its cavity ends. */
    long micros(LaidWire wire, Millimetres cut, int cavityEnds) {
        double cutMm = cut.value();
        return Math.round(cutMm * wire.microsPerM() / 1000) + cavityEnds * wire.end().micros();
    }

    /** The curves of a device in a block. */
    TimeCurrentBand bandInBlock(Device device) {
        return placed.bandInBlock(device);
    }

    /** The curves of a main device, near the source. */
    TimeCurrentBand bandOfMain(Device main) {
        return placed.bandOfMain(main);
    }

    /** The overload that heats a wire most before a device opens, to be judged by the wire. */
    WorstOverload worstOverload(
            Device device, TimeCurrentBand band, LaidWire wire, double highestA) {
        return placed.worstOverload(device, band, wire, highestA);
    }

    /** Candidates as they will lie, in the same order. */
    LaidWire[] layAll(List<Wire> wires) {
        LaidWire[] laid = laidLists.get(wires);
        if (laid == null) {
            laid = new LaidWire[wires.size()];
            for (int i = 0; i < laid.length; i++) {
                laid[i] = lay(wires.get(i));
            }
            laidLists.put(wires, laid);
        }
        return laid;
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
                        cut(routeM),
                        currentA,
                        laidWire.dropV(routeM, currentA),
                        from,
                        to);
        return new LaidLead(lead, laidWire);
    }
}
