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
import java.util.Comparator;
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
    private final LoadCosts costs;
    private final double mayLosePercent;

    /** For each group of alike branches the sizes that the device protects, once asked for. */
    private @Nullable List<List<BranchSearch.Option>> protectedSizes;

    /**
     * @param upstream up to the start of the trunk
     */
    LeadChoice(Loom loom, CircuitDemand demand, Protection protection, Upstream upstream) {
        this.loom = loom;
        this.job = loom.job();
        this.demand = demand;
        this.protection = protection;
        this.upstream = upstream;
        this.path = loom.pathOf(demand);
        this.costs = path.costs();
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
        return Optional.ofNullable(tryOn(path.sizeOf(trunk)).missed());
    }

    private Choice choose(LaidWire[] candidates) {
        long branchesCostMicros = costs.leastBranchMicros(protection.device().ratingA());
        @Nullable Trial best = null;
        @Nullable Trial standIn = null;
        for (LaidWire candidate : candidates) {
            Size trunk = path.sizeOf(candidate);
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

    private long trunkMicros(Size trunk) {
        return costs.trunkMicros(trunk, upstream.endsInCavity());
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
        for (List<BranchSearch.Option> sizes : protectedSizes()) {
            search.offer(thatLoseLittle(sizes, upToBranchV));
        }
        return search.findCheapest(trunkMicros(trunk) + costs.leastSpliceMicros());
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

    private List<List<BranchSearch.Option>> protectedSizes() {
        List<List<BranchSearch.Option>> known = protectedSizes;
        if (known == null) {
            known = new ArrayList<>();
            for (int first : groupsOfAlike()) {
                known.add(protectedSizes(first));
            }
            protectedSizes = known;
        }
        return known;
    }

    private List<BranchSearch.Option> protectedSizes(int first) {
        SingleLoad load = demand.loads().get(first);
        double branchM = load.load().branchM();
        List<BranchSearch.Option> options = new ArrayList<>();
        for (LaidWire wire : candidatesFor(first)) {
            if (protection.missedInOverload(wire) == null) {
                Size size = path.sizeOf(wire);
                double lostV = size.warmOhm(branchM, load.runningA()) * load.runningA();
                long micros = costs.branchMicros(size, first) * load.load().count();
                options.add(new BranchSearch.Option(size, lostV, micros));
            }
        }
        options.sort(Comparator.comparingLong(BranchSearch.Option::micros));
        return options;
    }

    /** The sizes whose drop alone, splices left out, is not too much already. */
    private List<BranchSearch.Option> thatLoseLittle(
            List<BranchSearch.Option> sizes, double upToBranchV) {
        List<BranchSearch.Option> little = new ArrayList<>(sizes.size());
        for (BranchSearch.Option size : sizes) {
            if (percentOf(upToBranchV + size.lostV()) <= mayLosePercent) {
                little.add(size);
            }
        }
        return little;
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
            micros += costs.branchMicros(branches[i], i);
        }
        for (Joint joint : outcome.chain()) {
            micros += path.returnsByWire() ? 2 * joint.micros() : joint.micros();
            if (joint.linksOn()) {
                micros += costs.linkMicros(trunk);
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
