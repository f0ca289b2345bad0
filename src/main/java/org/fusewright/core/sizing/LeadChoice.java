package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.FeedPlan.Limb;
import org.fusewright.core.sizing.LoadPath.Outcome;
import org.fusewright.core.sizing.LoadPath.Size;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The sizes of the leads to a circuit's loads. The trunk is the thinnest stocked size that
 *
 * <ul>
 *   <li>carries the device's rating where it lies ({@link Ampacity}),
 *   <li>survives a dead short until the device clears ({@link ShortCircuitWithstand}),
 *   <li>fits a stocked terminal and seal, when it ends in a cavity, and
 *   <li>keeps each load's voltage drop inside its limit, out and back, contacts included.
 * </ul>
 *
 * Each branch is then the thinnest that the device still protects and that keeps every drop. When
 * nothing does it all, the thickest that fits stands in and the checks say what it misses.
 */
final class LeadChoice {

    /**
     * What stands before the leads.
     *
     * @param highestA prospective short-circuit current at the device
     */
    record Protection(Device device, TimeCurrentBand band, double highestA) {

        /** Whether a wire carries the rating and survives a short up to a far end. */
        boolean holds(LaidWire wire, double currentA, Supply supply, double farOhm) {
            return wire.isProtectedBy(device.ratingA()) && survives(wire, currentA, supply, farOhm);
        }

        boolean survives(LaidWire wire, double currentA, Supply supply, double farOhm) {
            double lowestA = FaultCurrent.lowestA(supply, new Ohms(farOhm));
            return band.letThroughA2s(lowestA, highestA, ShortCircuitWithstand.LONGEST_S)
                    <= ShortCircuitWithstand.survivesA2s(wire, currentA);
        }
    }

    /**
     * @param trunkSize out and, for a wire return, back
     * @param branches one for each single load; empty when the trunk goes to the only one
     * @param farOhm resistance of the way to the farthest load and back, from the battery on
     */
    record Choice(
            Size trunkSize, Size[] branches, List<SizedLoad> loads, double farOhm, String why) {

        LaidWire trunk() {
            return trunkSize.out();
        }
    }

    private final Loom loom;
    private final Job job;
    private final CircuitDemand demand;
    private final Protection protection;
    private final Limb upstream;
    private final boolean startsInCavity;
    private final LoadPath path;

    /**
     * @param upstream up to the start of the trunk, without the trunk's own terminal
     */
    LeadChoice(
            Loom loom,
            CircuitDemand demand,
            Protection protection,
            Limb upstream,
            boolean startsInCavity) {
        this.loom = loom;
        this.job = loom.job();
        this.demand = demand;
        this.protection = protection;
        this.upstream = upstream;
        this.startsInCavity = startsInCavity;
        this.path = new LoadPath(loom, demand);
    }

    Choice choose() {
        List<Wire> candidates = demand.resolved().trunkWires();
        String passed = "";
        @Nullable Size standIn = null;
        for (Wire candidate : candidates) {
            Size trunk = sizeOf(loom.lay(candidate));
            Size[] branches = alike(trunk);
            if (startsInCavity && !trunk.out().fitsCavity()) {
                passed = trunk.out().wire().size() + " fits no stocked terminal and seal";
                continue;
            }
            standIn = trunk;
            Optional<String> missed = findMissed(trunk, branches);
            if (missed.isEmpty()) {
                thin(trunk, branches);
                return finish(trunk, branches, decided(trunk, passed));
            }
            passed = missed.get();
        }
        Size thickest = standIn == null ? sizeOf(loom.lay(candidates.getLast())) : standIn;
        Size[] branches = alike(thickest);
        return finish(
                thickest,
                branches,
                thickest.out().wire().size()
                        + (candidates.size() == 1 && demand.resolved().circuit().gauge().isPresent()
                                ? ", fixed by the job, misses a limit: "
                                : " stands in, no size stocked in "
                                        + demand.resolved().colour()
                                        + " meets every limit: ")
                        + passed
                        + ".");
    }

    /** Keeps a trunk that was chosen before, now that the way to it is known better. */
    Choice keep(Choice before) {
        Size trunk = before.trunkSize();
        Size[] branches = alike(trunk);
        if (findMissed(trunk, branches).isEmpty()) {
            thin(trunk, branches);
        }
        return finish(trunk, branches, before.why());
    }

    private String decided(Size trunk, String passed) {
        String size = trunk.out().wire().size().toString();
        if (demand.resolved().circuit().gauge().isPresent()) {
            return size + ": the job fixes the size.";
        }
        return passed.isEmpty()
                ? size + ": the thinnest in stock does."
                : size + ": the next thinner does not do, " + passed + ".";
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

    private Size[] alike(Size trunk) {
        if (!path.isSpliced()) {
            return new Size[0];
        }
        Size[] branches = new Size[demand.loads().size()];
        Arrays.fill(branches, trunk);
        return branches;
    }

    private Limb atTrunk(Size trunk) {
        return startsInCavity
                ? upstream.plusContact(trunk.out().terminalOhm(), demand.runningA())
                : upstream;
    }

    private Optional<String> findMissed(Size trunk, Size[] branches) {
        LaidWire wire = trunk.out();
        if (startsInCavity && !wire.servesCavity(demand.runningA())) {
            return Optional.of(
                    "a terminal on "
                            + wire.wire().size()
                            + " carries "
                            + Say.amps(wire.terminalA()));
        }
        if (!wire.isProtectedBy(protection.device().ratingA())) {
            return Optional.of(
                    wire.wire().size()
                            + " carries "
                            + Say.amps(wire.allowedA())
                            + " here, the device lets "
                            + Say.rating(protection.device().ratingA())
                            + " pass");
        }
        Limb start = atTrunk(trunk);
        Outcome outcome = path.walk(trunk, branches);
        double farOhm = start.mostOhm() + outcome.farOhm();
        if (!protection.survives(wire, demand.runningA(), job.supply(), farOhm)) {
            return Optional.of(
                    wire.wire().size() + " does not survive a dead short until the device clears");
        }
        double worst = worstPercent(start, outcome);
        return worst <= demand.resolved().circuit().maxDropPercent()
                ? Optional.empty()
                : Optional.of(wire.wire().size() + " would lose " + Say.percent(worst));
    }

    private double percentOf(double dropV) {
        return VoltageDrop.percent(dropV, job.supply());
    }

    private double worstPercent(Limb start, Outcome outcome) {
        double worstV = 0;
        for (double dropV : outcome.dropV()) {
            worstV = Math.max(worstV, dropV);
        }
        return percentOf(start.dropV() + worstV);
    }

    /**
     * Makes the branches of each load as thin as device, short and drop allow, in the order of the
     * loads; those that a load's count stands for are alike.
     */
    private void thin(Size trunk, Size[] branches) {
        Limb start = atTrunk(trunk);
        int next;
        for (int from = 0; from < branches.length; from = next) {
            SingleLoad load = demand.loads().get(from);
            next = from + load.load().count();
            for (LaidWire wire : loom.layAll(demand.resolved().wires())) {
                if (wire.areaMm2() >= trunk.areaMm2()) {
                    break;
                }
                if (!wire.isProtectedBy(protection.device().ratingA())) {
                    continue;
                }
                Arrays.fill(branches, from, next, sizeOf(wire));
                Outcome outcome = path.walk(trunk, branches);
                double farOhm = start.mostOhm() + outcome.farOhm();
                if (worstPercent(start, outcome) <= demand.resolved().circuit().maxDropPercent()
                        && protection.survives(wire, load.runningA(), job.supply(), farOhm)) {
                    break;
                }
                Arrays.fill(branches, from, next, trunk);
            }
        }
    }

    private Choice finish(Size trunk, Size[] branches, String why) {
        Limb start = atTrunk(trunk);
        Outcome outcome = path.walk(trunk, branches);
        List<SizedLoad> loads = new ArrayList<>();
        for (int i = 0; i < demand.loads().size(); i++) {
            SingleLoad load = demand.loads().get(i);
            double dropV = start.dropV() + outcome.dropV()[i];
            loads.add(new SizedLoad(load.name(), load.runningA(), dropV, percentOf(dropV)));
        }
        return new Choice(
                trunk, branches, List.copyOf(loads), start.mostOhm() + outcome.farOhm(), why);
    }
}
