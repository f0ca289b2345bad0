package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.sizing.FeedPlan.Limb;
import org.fusewright.core.sizing.LoadPath.Outcome;
import org.fusewright.core.sizing.LoadPath.Size;
import org.fusewright.core.sizing.Missed.Reason;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The sizes of the leads to a circuit's loads behind a given device: trunk and branches of least
 * cost, ends and splices included, so that each of them
 *
 * <ul>
 *   <li>carries the device's rating where it lies ({@link Ampacity}),
 *   <li>survives a dead short until the device clears ({@link ShortCircuitWithstand}), which it
 *       does in time even at the far end; so do the leads that the way to the trunk passes,
 *   <li>fits a stocked terminal and seal that carry the current, when it ends in a cavity, and
 *   <li>keeps each load's voltage drop inside its limit, out and back, contacts included.
 * </ul>
 *
 * Every stocked size is tried as the trunk, with all sizes of branches; those of a load that counts
 * several times are alike. When nothing does it all, the thickest trunk that fits stands in and the
 * checks say what it misses.
 */
final class LeadChoice {

    /**
     * @param trunkSize out and, for a wire return, back
     * @param branches one for each single load; empty when the trunk goes to the only one
     * @param farOhm resistance of the way to the farthest load and back, from the battery on
     * @param micros cost in millionths of the currency
     * @param missed empty when every limit is kept
     */
    record Choice(
            Size trunkSize,
            Size[] branches,
            List<SizedLoad> loads,
            double farOhm,
            long micros,
            Optional<Missed> missed) {

        LaidWire trunk() {
            return trunkSize.out();
        }
    }

    /** A trunk tried on, with branches of least cost. */
    private record Trial(
            Size trunk, Size[] branches, Outcome outcome, long micros, @Nullable Missed missed) {}

    private final Loom loom;
    private final Job job;
    private final CircuitDemand demand;
    private final Protection protection;
    private final Upstream upstream;
    private final LoadPath path;
    private final double mayLosePercent;

    /**
     * @param upstream up to the start of the trunk
     */
    LeadChoice(Loom loom, CircuitDemand demand, Protection protection, Upstream upstream) {
        this.loom = loom;
        this.job = loom.job();
        this.demand = demand;
        this.protection = protection;
        this.upstream = upstream;
        this.path = new LoadPath(loom, demand);
        this.mayLosePercent = demand.resolved().circuit().maxDropPercent();
    }

    Choice choose() {
        return choose(loom.layFor(demand.id(), "/out", demand.resolved().trunkWires()));
    }

    /** The branches of least cost behind a trunk that is settled. */
    Choice chooseBehind(LaidWire trunk) {
        return choose(new LaidWire[] {trunk});
    }

    /** What a trunk would miss; empty when it would do. */
    Optional<Missed> findMissed(LaidWire trunk) {
        return Optional.ofNullable(tryOn(sizeOf(trunk)).missed());
    }

    private Choice choose(LaidWire[] candidates) {
        long branchesCostMicros = leastBranchMicros();
        @Nullable Trial best = null;
        @Nullable Trial standIn = null;
        for (LaidWire candidate : candidates) {
            Size trunk = sizeOf(candidate);
            if (best != null && trunkMicros(trunk) + branchesCostMicros >= best.micros()) {
                continue;
            }
            Trial trial = tryOn(trunk);
            if (trial.missed() == null) {
                if (best == null || trial.micros() < best.micros()) {
                    best = trial;
                }
            } else if (standIn == null || trial.missed().reason() != Reason.FITS_NO_TERMINAL) {
                standIn = trial;
            }
        }
        Trial chosen = best == null ? standIn : best;
        if (chosen == null) {
            throw new IllegalArgumentException("no wire to choose from for " + demand.id());
        }
        return finish(chosen);
    }

    private Size sizeOf(LaidWire out) {
        return path.returnsByWire()
                ? new Size(out, Optional.of(returnWire(out)))
                : new Size(out, Optional.empty());
    }

    /** The same size in ground colour, else the next thicker, else the wire out itself. */
    private LaidWire returnWire(LaidWire out) {
        for (LaidWire ground : loom.layAll(demand.resolved().groundWires())) {
            if (ground.wire().family().equals(out.wire().family())
                    && ground.wire().size().compareTo(out.wire().size()) >= 0) {
                return ground;
            }
        }
        return out;
    }

    /** Cost of the trunk alone, out and back. */
    long trunkMicros(LaidWire trunk) {
        return trunkMicros(sizeOf(trunk));
    }

    private long trunkMicros(Size trunk) {
        return sizeMicros(trunk, path.trunkM(), upstream.endsInCavity() ? 1 : 0);
    }

    private long sizeMicros(Size size, double routeM, int cavityEnds) {
        long micros = loom.micros(size.out(), routeM, cavityEnds);
        return size.back().isPresent()
                ? micros + loom.micros(size.back().get(), routeM, 0)
                : micros;
    }

    /** No choice of branches and of what joins them costs less. */
    long leastBranchMicros() {
        if (!path.isSpliced()) {
            return 0;
        }
        long leastPerM = Long.MAX_VALUE;
        for (LaidWire wire : loom.layAll(demand.resolved().wires())) {
            if (wire.isProtectedBy(protection.device().ratingA())) {
                leastPerM = Math.min(leastPerM, wire.microsPerM());
            }
        }
        if (leastPerM == Long.MAX_VALUE) {
            return 0;
        }
        long spliceMicros = leastSpliceMicros();
        double lengthM = 0;
        for (SingleLoad load : demand.loads()) {
            lengthM += load.load().branchM();
        }
        return spliceMicros + (long) (lengthM * leastPerM);
    }

    private long leastSpliceMicros() {
        long leastMicros = loom.splices().leastMicros();
        return path.returnsByWire() ? 2 * leastMicros : leastMicros;
    }

    /** Least cost of all leads to the loads, whatever they lose. */
    long leastMicros() {
        long least = Long.MAX_VALUE;
        for (LaidWire wire : loom.layFor(demand.id(), "/out", demand.resolved().trunkWires())) {
            if (wire.isProtectedBy(protection.device().ratingA())) {
                least = Math.min(least, trunkMicros(wire));
            }
        }
        return least == Long.MAX_VALUE ? 0 : least + leastBranchMicros();
    }

    private Limb atTrunk(Size trunk) {
        return upstream.endsInCavity()
                ? upstream.limb().plusContact(trunk.out().terminalOhm(), demand.runningA())
                : upstream.limb();
    }

    private Trial tryOn(Size trunk) {
        LaidWire wire = trunk.out();
        Size[] branches = alike(trunk);
        @Nullable Missed missed = missedByItself(wire);
        if (missed == null && branches.length > 0) {
            Size @Nullable [] cheapest = cheapestBranches(trunk);
            branches = cheapest == null ? branches : cheapest;
        }
        Outcome outcome = path.walk(trunk, branches);
        if (missed == null) {
            missed = missedTogether(trunk, branches, outcome);
        }
        return new Trial(trunk, branches, outcome, microsOf(trunk, branches, outcome), missed);
    }

    private Size[] alike(Size trunk) {
        if (!path.isSpliced()) {
            return new Size[0];
        }
        Size[] branches = new Size[demand.loads().size()];
        Arrays.fill(branches, trunk);
        return branches;
    }

    private @Nullable Missed missedByItself(LaidWire trunk) {
        if (upstream.endsInCavity() && !trunk.fitsCavity()) {
            return new Missed(Reason.FITS_NO_TERMINAL, trunk, 0);
        }
        if (upstream.endsInCavity() && !trunk.servesCavity(demand.runningA())) {
            return new Missed(Reason.TERMINAL_TOO_WEAK, trunk, trunk.terminalA());
        }
        return protection.missedInOverload(trunk);
    }

    private @Nullable Missed missedTogether(Size trunk, Size[] branches, Outcome outcome) {
        Limb start = atTrunk(trunk);
        double farOhm = start.mostOhm() + outcome.farOhm();
        @Nullable Missed missed = protection.missedInShort(trunk.out(), demand.runningA(), farOhm);
        for (int i = 0; i < upstream.passed().size() && missed == null; i++) {
            Upstream.Passed passed = upstream.passed().get(i);
            missed = protection.missedInShort(passed.wire(), passed.currentA(), farOhm);
        }
        for (int i = 0; i < branches.length && missed == null; i++) {
            if (i == 0 || branches[i] != branches[i - 1]) {
                double runningA = demand.loads().get(i).runningA();
                missed = protection.missedInShort(branches[i].out(), runningA, farOhm);
            }
        }
        if (missed != null) {
            return missed;
        }
        for (int i = 0; i < outcome.dropV().length; i++) {
            double lost = percentOf(start.dropV() + outcome.dropV()[i]);
            if (lost > mayLosePercent) {
                return new Missed(Reason.DROPS_TOO_MUCH, trunk.out(), lost);
            }
        }
        return outcome.fits() ? null : new Missed(Reason.NO_SPLICE, trunk.out(), 0);
    }

    /** Nothing when with this trunk no branches keep every limit. */
    private Size @Nullable [] cheapestBranches(Size trunk) {
        BranchSearch search =
                new BranchSearch(
                        groupsOfAlike(),
                        demand.loads().size(),
                        branches -> costOf(trunk, branches));
        double upToBranchV =
                atTrunk(trunk).dropV()
                        + trunk.warmOhm(path.trunkM(), demand.runningA()) * demand.runningA();
        for (int first : groupsOfAlike()) {
            search.offer(optionsFor(first, upToBranchV));
        }
        return search.findCheapest(trunkMicros(trunk) + leastSpliceMicros());
    }

    /** First of the single loads that each load stands for. */
    private int[] groupsOfAlike() {
        int[] firsts = new int[demand.loads().size()];
        int groups = 0;
        for (int first = 0; first < firsts.length; ) {
            firsts[groups++] = first;
            first += demand.loads().get(first).load().count();
        }
        return Arrays.copyOf(firsts, groups);
    }

    /** The sizes whose drop alone, splices left out, is not too much already. */
    private List<BranchSearch.Option> optionsFor(int first, double upToBranchV) {
        SingleLoad load = demand.loads().get(first);
        double branchM = load.load().branchM();
        List<BranchSearch.Option> options = new ArrayList<>();
        for (LaidWire wire : candidatesFor(first)) {
            if (protection.missedInOverload(wire) != null) {
                continue;
            }
            Size size = sizeOf(wire);
            double lostV = upToBranchV + size.warmOhm(branchM, load.runningA()) * load.runningA();
            if (percentOf(lostV) <= mayLosePercent) {
                long micros = sizeMicros(size, branchM, 0) * load.load().count();
                options.add(new BranchSearch.Option(size, micros));
            }
        }
        return options;
    }

    private long costOf(Size trunk, Size[] branches) {
        Outcome outcome = path.walk(trunk, branches);
        return missedTogether(trunk, branches, outcome) == null
                ? microsOf(trunk, branches, outcome)
                : -1;
    }

    private LaidWire[] candidatesFor(int branch) {
        List<Wire> wires = demand.resolved().wires();
        return loom.keepsWires()
                ? loom.layFor(demand.id(), "/branch-" + (branch + 1), wires)
                : loom.layAll(wires);
    }

    private long microsOf(Size trunk, Size[] branches, Outcome outcome) {
        long micros = trunkMicros(trunk);
        for (int i = 0; i < branches.length; i++) {
            micros += sizeMicros(branches[i], demand.loads().get(i).load().branchM(), 0);
        }
        for (Joint joint : outcome.chain()) {
            micros += path.returnsByWire() ? 2 * joint.micros() : joint.micros();
            if (joint.linksOn()) {
                micros += sizeMicros(trunk, loom.pigtailM(), 0);
            }
        }
        return micros;
    }

    private double percentOf(double dropV) {
        return VoltageDrop.percent(dropV, job.supply());
    }

    private Choice finish(Trial trial) {
        Limb start = atTrunk(trial.trunk());
        Outcome outcome = trial.outcome();
        List<SizedLoad> loads = new ArrayList<>(demand.loads().size());
        for (int i = 0; i < demand.loads().size(); i++) {
            SingleLoad load = demand.loads().get(i);
            double dropV = start.dropV() + outcome.dropV()[i];
            loads.add(new SizedLoad(load.name(), load.runningA(), dropV, percentOf(dropV)));
        }
        return new Choice(
                trial.trunk(),
                trial.branches(),
                loads,
                start.mostOhm() + outcome.farOhm(),
                trial.micros(),
                Optional.ofNullable(trial.missed()));
    }
}
