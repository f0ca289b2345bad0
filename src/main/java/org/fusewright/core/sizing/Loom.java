package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Metres;
import org.jspecify.annotations.Nullable;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** What all leads of one job share: surroundings, stock for their ends, and how they are cut. */
final class Loom {

    private final Job job;
    private final Stock stock;
    private final KeptSizes kept;
    private final TerminalChoice terminals;
    private final SpliceChoice splices;
    private final Map<Wire, LaidWire> laid = new IdentityHashMap<>();
    private final Map<Make, LaidWire> makes = new HashMap<>();
    private final Map<Device, TimeCurrentBand> bandsInBlock = new IdentityHashMap<>();
    private final Map<Device, TimeCurrentBand> bandsOfMains = new IdentityHashMap<>();
    private final Map<TimeCurrentBand, Map<WireHeat, WorstOverload>> worstOverloads =
            new IdentityHashMap<>();
    private final Map<List<Wire>, LaidWire[]> laidLists = new IdentityHashMap<>();

    Loom(ResolvedJob resolved, KeptSizes kept) {
        this.job = resolved.job();
        this.stock = resolved.stock();
        this.kept = kept;
        this.terminals = new TerminalChoice(resolved.stock());
        this.splices = new SpliceChoice(resolved.stock());
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
        @Nullable LaidWire known = laid.get(wire);
        if (known == null) {
            long microsPerM = stock.prices().unitPriceMicros(wire.number());
            known =
                    makes.computeIfAbsent(
                                    Make.of(wire),
                                    make ->
                                            LaidWire.of(
                                                    wire,
                                                    job.surroundings(),
                                                    microsPerM,
                                                    terminals.endOf(wire)))
                            .inColour(wire, microsPerM);
            laid.put(wire, known);
        }
        return known;
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
    long micros(LaidWire wire, double routeM, int cavityEnds) {
        double cutMm = CutLength.of(new Metres(routeM), job.choices()).value();
        return Math.round(cutMm * wire.microsPerM() / 1000) + cavityEnds * wire.end().micros();
    }

    /** What a wire does depends on; its colour is not among it. */
    private record Make(
            double copperMm2,
            double outsideMm,
            double milliohmPerM,
            double classC,
            String insulation) {

        static Make of(Wire wire) {
            return new Make(
                    wire.copperMm2(),
                    wire.outsideMm(),
                    wire.milliohmPerM(),
                    wire.classC(),
                    wire.insulation());
        }
    }

    /** The curves of a device in a block. */
    TimeCurrentBand bandInBlock(Device device) {
        return bandsInBlock.computeIfAbsent(
                device, d -> TimeCurrentBand.of(d, job.surroundings().blockAmbient()));
    }

    /** The curves of a main device, near the source. */
    TimeCurrentBand bandOfMain(Device main) {
        return bandsOfMains.computeIfAbsent(
                main, d -> TimeCurrentBand.of(d, job.surroundings().ambient()));
    }

    /** The overload that heats a wire most before a device opens, to be judged by the wire. */
    WorstOverload worstOverload(
            Device device, TimeCurrentBand band, LaidWire wire, double highestA) {
        if (highestA < band.surelyOpensA(ShortCircuitWithstand.LONGEST_S)) {
            return WorstOverload.behind(band, device.ratingA(), wire, highestA);
        }
        return worstOverloads
                .computeIfAbsent(band, b -> new IdentityHashMap<>())
                .computeIfAbsent(
                        wire.heat(),
                        heat -> WorstOverload.behind(band, device.ratingA(), wire, highestA));
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
