package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.sizing.FeedPlan.Limb;
import org.jspecify.annotations.Nullable;

import java.util.Optional;

/**
 * One circuit's leads from a given start to its loads: through a jumper and a relay, or straight.
 */
final class CircuitWay {

    /**
     * @param jumper to its relay, when it has one
     * @param micros cost of jumper and leads in millionths of the currency
     * @param missed the first limit that they miss
     */
    record Choice(
            Optional<LaidWire> jumper,
            LeadChoice.Choice leads,
            long micros,
            Optional<Missed> missed) {

        /** What starts where the way starts. */
        LaidWire first() {
            return jumper.orElse(leads.trunk());
        }
    }

    private final Loom loom;
    private final CircuitDemand demand;
    private final LoadPath path;
    private final Protection protection;
    private final Jumpers jumpers;

    CircuitWay(Loom loom, CircuitDemand demand, Protection protection) {
        this.loom = loom;
        this.demand = demand;
        this.path = loom.pathOf(demand);
        this.protection = protection;
        this.jumpers = new Jumpers(loom, protection);
    }

    CircuitDemand demand() {
        return demand;
    }

    private boolean isRelayed() {
        return demand.resolved().relay().isPresent();
    }

    /** Route of a jumper: between two cavities of a block, or from a splice beside it. */
    static double jumperM(Loom loom, boolean fromCavity) {
        return fromCavity ? loom.jumperM() : loom.pigtailM();
    }

    private Millimetres jumperCut(boolean fromCavity) {
        return fromCavity ? loom.jumperCut() : loom.pigtailCut();
    }

    private static int cavityEnds(boolean fromCavity) {
        return fromCavity ? 2 : 1;
    }

    private long jumperMicros(LaidWire jumper, boolean fromCavity) {
        return loom.micros(jumper, jumperCut(fromCavity), cavityEnds(fromCavity));
    }

    /** Candidates for the lead that starts where the way starts. */
    LaidWire[] listFirst() {
        return isRelayed()
                ? loom.layFor(demand.id(), "/jumper", demand.resolved().wires())
                : loom.layFor(demand.id(), "/out", demand.resolved().trunkWires());
    }

    /** Whether a wire could be the first, by what it does itself. */
    boolean mayStartWith(LaidWire first) {
        return isRelayed()
                ? jumpers.missedBy(first, demand.runningA()) == null
                : protection.missedInOverload(first) == null;
    }

    /** No way from a cavity costs less. */
    long leastMicros() {
        long micros = path.costs().leastMicros(ratingA());
        return isRelayed() ? micros + leastJumperMicros() : micros;
    }

    private long leastJumperMicros() {
        long least = LoadCosts.NONE_MICROS;
        for (LaidWire jumper : listFirst()) {
            if (jumper.isProtectedBy(ratingA())) {
                least = Math.min(least, jumperMicros(jumper, true));
            }
        }
        return least;
    }

    /** Least cost behind a splice of all but the first lead, whatever they lose. */
    long leastMicrosBehindFirst() {
        return isRelayed()
                ? path.costs().leastMicros(ratingA())
                : path.costs().leastBranchMicros(ratingA());
    }

    /** Cost of the first lead alone, from a splice on. */
    long firstMicros(LaidWire first) {
        return isRelayed() ? jumperMicros(first, false) : trunkMicros(first, false);
    }

    private double ratingA() {
        return protection.device().ratingA();
    }

    private LeadChoice leads(Upstream start) {
        return new LeadChoice(loom, demand, protection, start);
    }

    /** The leads behind a jumper, or straight from the start. */
    private LeadChoice leads(Upstream start, Optional<LaidWire> jumper) {
        if (jumper.isEmpty()) {
            return leads(start);
        }
        Relay relay = demand.resolved().relay().orElseThrow();
        LaidWire wire = jumper.get();
        double runningA = demand.runningA();
        Limb behind =
                start.limb()
                        .plusContact(
                                cavityEnds(start.endsInCavity()) * wire.terminalOhm(), runningA)
                        .plusLead(wire, jumperM(loom, start.endsInCavity()), runningA)
                        .plusDevice(relay.contactMilliohm() / 1000, runningA);
        return leads(start.plusPassed(wire, runningA).to(behind, true));
    }

    /** The way of least cost that keeps every limit; when there is none, the nearest. */
    Choice cheapest(Upstream start) {
        if (!isRelayed()) {
            return straight(leads(start).choose());
        }
        LaidWire[] wires = listFirst();
        long leastMicrosBehind = leastMicrosBehindFirst();
        @Nullable Choice best = null;
        for (LaidWire jumper : wires) {
            long leastMicros = jumperMicros(jumper, start.endsInCavity()) + leastMicrosBehind;
            if (best != null && leastMicros >= best.micros()
                    || jumpers.missedBy(jumper, demand.runningA()) != null) {
                continue;
            }
            Choice choice = startingWith(start, jumper);
            if (choice.missed().isEmpty() && (best == null || choice.micros() < best.micros())) {
                best = choice;
            }
        }
        return best == null ? standIn(start, wires) : best;
    }

    private Choice standIn(Upstream start, LaidWire[] wires) {
        boolean fromCavity = start.endsInCavity();
        return startingWith(
                start,
                jumpers.standIn(
                        wires, jumperCut(fromCavity), cavityEnds(fromCavity), demand.runningA()));
    }

    /** The cheapest way that starts with this wire. */
    Choice startingWith(Upstream start, LaidWire first) {
        if (!isRelayed()) {
            return straight(leads(start).chooseBehind(first));
        }
        LeadChoice.Choice choice = leads(start, Optional.of(first)).choose();
        @Nullable Missed missed = jumpers.missedBy(first, demand.runningA());
        return new Choice(
                Optional.of(first),
                choice,
                jumperMicros(first, start.endsInCavity()) + choice.micros(),
                missed == null ? choice.missed() : Optional.of(missed));
    }

    private static Choice straight(LeadChoice.Choice choice) {
        return new Choice(Optional.empty(), choice, choice.micros(), choice.missed());
    }

    /** What a jumper and a trunk would miss; empty when they would do. */
    Optional<Missed> findMissed(Upstream start, Optional<LaidWire> jumper, LaidWire trunk) {
        @Nullable Missed missed =
                jumper.isEmpty() ? null : jumpers.missedBy(jumper.get(), demand.runningA());
        return missed == null ? leads(start, jumper).findMissed(trunk) : Optional.of(missed);
    }

    /** Cost of a trunk alone, from a cavity or from a splice. */
    long trunkMicros(LaidWire trunk, boolean fromCavity) {
        return path.costs().trunkMicros(path.sizeOf(trunk), fromCavity || isRelayed());
    }
}
