package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.sizing.BranchSizing.Branch;
import org.fusewright.core.sizing.BranchSizing.Outlets;
import org.fusewright.core.sizing.BranchSizing.Wires;
import org.fusewright.core.sizing.DeviceLimits.Limit;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * The device of a circuit and all leads behind it, chosen together: of the first preferred kind
 * with which every limit is kept, the combination of least cost; among equals the smallest rating.
 * When no kind has one, the device that keeps most of its own limits stands in with the leads that
 * suit it best, and the checks name what is missed.
 */
final class CircuitChoice {

    private final Loom loom;
    private final CircuitDemand owner;
    private final List<CircuitDemand> borrowers;
    private final DeviceDemand demand;
    private final DeviceLimits limits;
    private final Outlets outlets;

    /**
     * @param borrowers circuits whose relay contact the owner's device feeds as well
     */
    CircuitChoice(
            Loom loom,
            CircuitDemand owner,
            List<CircuitDemand> borrowers,
            DeviceDemand demand,
            Outlets outlets) {
        this.loom = loom;
        this.owner = owner;
        this.borrowers = borrowers;
        this.demand = demand;
        this.outlets = outlets;
        this.limits =
                new DeviceLimits(
                        demand,
                        loom.job().supply(),
                        loom.placed(),
                        outlets.highestA(owner.id(), loom.job().supply()));
    }

    /** A device to size the feeds with, before the way to it is known. */
    static Device firstGuess(Loom loom, DeviceDemand demand) {
        DeviceLimits alone = new DeviceLimits(demand, loom.job().supply(), loom.placed(), 0);
        @Nullable Device cheapest = null;
        for (Device device : demand.candidates()) {
            if (cheapest != null && device.kind() != cheapest.kind()) {
                break;
            }
            if ((cheapest == null || micros(loom, device) < micros(loom, cheapest))
                    && alone.areMetBy(device)) {
                cheapest = device;
            }
        }
        return cheapest == null ? alone.leastBad() : cheapest;
    }

    private static long micros(Loom loom, Device device) {
        return loom.stock().prices().unitPriceMicros(device.number());
    }

    /** Plans in the order of owner and borrowers, each with what decided. */
    Branch choose() {
        List<Text> why = new ArrayList<>();
        List<Device> candidates = demand.candidates();
        int next;
        for (int from = 0; from < candidates.size(); from = next) {
            next = endOfKind(candidates, from);
            // A copy: a view between the list and those who walk it slows down every walk.
            List<Device> ofKind = List.copyOf(candidates.subList(from, next));
            @Nullable Branch best = cheapest(ofKind, outlets.mainRatingA(owner.id()));
            if (best == null) {
                best = cheapest(ofKind, Double.POSITIVE_INFINITY);
            }
            if (best != null) {
                why.add(decided(best, ofKind));
                return explained(best, why);
            }
            why.add(skipped(ofKind));
        }
        Branch standIn = sizeBehind(limits.leastBad());
        why.clear();
        why.add(missedByAll(standIn));
        return explained(standIn, why);
    }

    /** The leads behind a device that is settled, with what there is to say of it. */
    Branch keep(Device device) {
        Branch kept = sizeBehind(device);
        List<Text> why = new ArrayList<>();
        why.add(
                limits.areMetBy(device) && kept.missed().isEmpty()
                        ? decided(kept, List.of(device))
                        : missedByAll(kept));
        return explained(kept, why);
    }

    private static int endOfKind(List<Device> candidates, int from) {
        DeviceKind kind = candidates.get(from).kind();
        int end = from;
        while (end < candidates.size() && candidates.get(end).kind() == kind) {
            end++;
        }
        return end;
    }

    private BranchSizing sizing(Device device) {
        return new BranchSizing(loom, owner, borrowers, device, demand.carriedA(), outlets);
    }

    private Branch sizeBehind(Device device) {
        return sizing(device).size();
    }

    /**
     * A device that asks for a larger main device would cost more than it seems to.
     *
     * @param belowA rating of the main device that it must stay below
     */
    private @Nullable Branch cheapest(List<Device> ofKind, double belowA) {
        @Nullable Branch best = null;
        for (Device device : ofKind) {
            if (device.ratingA() >= belowA || !limits.areMetBy(device)) {
                continue;
            }
            BranchSizing sizing = sizing(device);
            if (best != null && sizing.leastMicros() >= best.micros()) {
                continue;
            }
            Branch branch = sizing.size();
            if (branch.missed().isEmpty() && (best == null || branch.micros() < best.micros())) {
                best = branch;
            }
        }
        return best;
    }

    /**
     * @param why of the owner's circuit
     */
    private Branch explained(Branch branch, List<Text> why) {
        List<CircuitPlan> plans = new ArrayList<>(branch.plans().size());
        for (int i = 0; i < branch.plans().size(); i++) {
            CircuitPlan plan = branch.plans().get(i);
            List<Text> all = new ArrayList<>();
            if (i == 0) {
                all.addAll(why);
            } else {
                List<Text> borrowed = new ArrayList<>(2);
                borrowed.add(Phrase.of("choice.borrowed", owner.id()));
                if (branch.missed().isEmpty()) {
                    nextCheaperTrunk(branch, i).ifPresent(borrowed::add);
                }
                all.add(Text.sentences(borrowed));
            }
            plan.demand()
                    .resolved()
                    .colourAsked()
                    .ifPresent(
                            asked ->
                                    all.add(
                                            Phrase.of(
                                                    "choice.colour",
                                                    asked.code(),
                                                    plan.demand().resolved().colour().code())));
            plans.add(plan.withWhy(all));
        }
        return new Branch(branch.device(), plans, branch.wires(), branch.micros(), branch.missed());
    }

    /** Why no device of a kind does: what its largest one misses. */
    private Text skipped(List<Device> ofKind) {
        @Nullable Device suitable = null;
        for (Device device : ofKind) {
            if (limits.areMetBy(device)) {
                suitable = device;
            }
        }
        Device told = suitable == null ? ofKind.getLast() : suitable;
        return DeviceWords.none(told, missed(told));
    }

    private Text missedByAll(Branch standIn) {
        Device device = standIn.device();
        return Phrase.of(
                demand.fixed() ? "choice.fixed-misses" : "choice.stands-in",
                DeviceWords.byKind(device),
                trunkOf(standIn).wire().size().label(),
                missed(device));
    }

    /** What a device misses, by itself or with every wire behind it; goes behind its name. */
    private Text missed(Device device) {
        @Nullable Limit missed = limits.firstMissed(device);
        if (missed != null) {
            return limits.says(device, missed);
        }
        return sizeBehind(device)
                .missed()
                .map(leads -> Phrase.of("device-misses.wire", leads.says()))
                .orElseGet(() -> Phrase.of("device-misses.nothing"));
    }

    /** What was chosen, and which checks the next cheaper device and the next cheaper wire fail. */
    private Text decided(Branch best, List<Device> ofKind) {
        boolean sizeFixed = owner.resolved().circuit().gauge().isPresent();
        Phrase chosen =
                Phrase.of(
                        demand.fixed() && sizeFixed
                                ? "choice.with-both-fixed"
                                : demand.fixed()
                                        ? "choice.with-rating-fixed"
                                        : sizeFixed ? "choice.with-size-fixed" : "choice.with",
                        DeviceWords.byKind(best.device()),
                        trunkOf(best).wire().size().label());
        List<Text> said = new ArrayList<>(4);
        said.add(Phrase.of("choice.chosen", chosen));
        nextCheaperDevice(best, ofKind).ifPresent(said::add);
        nextCheaperTrunk(best, 0).ifPresent(said::add);
        nextCheaperShare(best).ifPresent(said::add);
        return said.size() == 1 ? Phrase.of("choice.cheapest", chosen) : Text.sentences(said);
    }

    /** The dearest of the devices of its kind that cost less and fail; nothing when none does. */
    private Optional<Text> nextCheaperDevice(Branch best, List<Device> ofKind) {
        long bestMicros = micros(loom, best.device());
        List<Device> cheaper = new ArrayList<>();
        for (Device device : ofKind) {
            long micros = micros(loom, device);
            // Of equal prices the smaller rating is preferred, so it must have failed as well.
            if (micros < bestMicros
                    || micros == bestMicros && device.ratingA() < best.device().ratingA()) {
                cheaper.add(device);
            }
        }
        cheaper.sort(
                Comparator.<Device>comparingLong(device -> micros(loom, device))
                        .thenComparingDouble(Device::ratingA)
                        .reversed());
        for (Device device : cheaper) {
            @Nullable Failed failed = failedWith(sizing(device), best.wires());
            if (failed != null) {
                return Optional.of(
                        Phrase.of(
                                "choice.cheaper-device",
                                DeviceWords.byKind(device),
                                failed.code(),
                                failed.says()));
            }
        }
        return Optional.empty();
    }

    /** The dearest of a circuit's trunks that cost less and fail; nothing when none does. */
    private Optional<Text> nextCheaperTrunk(Branch best, int circuit) {
        BranchSizing sizing = sizing(best.device());
        CircuitDemand of = best.plans().get(circuit).demand();
        return nextCheaperWire(
                loom.layAll(of.resolved().trunkWires()),
                best.wires().trunks().get(circuit),
                wire -> sizing.trunkMicros(circuit, wire),
                wire -> failedWith(sizing, best.wires().withTrunk(circuit, wire)),
                "choice.cheaper-wire");
    }

    private Optional<Text> nextCheaperShare(Branch best) {
        if (best.wires().share().isEmpty()) {
            return Optional.empty();
        }
        BranchSizing sizing = sizing(best.device());
        return best.wires()
                .share()
                .flatMap(
                        share ->
                                nextCheaperWire(
                                        loom.layAll(owner.resolved().wires()),
                                        share,
                                        wire -> loom.micros(wire, loom.pigtailCut(), 1),
                                        wire -> failedWith(sizing, best.wires().withShare(wire)),
                                        "choice.cheaper-share"));
    }

    private static Optional<Text> nextCheaperWire(
            LaidWire[] wires,
            LaidWire chosen,
            ToLongFunction<LaidWire> microsOf,
            Function<LaidWire, @Nullable Failed> failedWith,
            String key) {
        long chosenMicros = microsOf.applyAsLong(chosen);
        List<PricedWire> cheaper = new ArrayList<>();
        for (LaidWire wire : wires) {
            long micros = microsOf.applyAsLong(wire);
            // Of equal prices the thinner is preferred, so it must have failed as well.
            if (wire.fitsCavity()
                    && (micros < chosenMicros
                            || micros == chosenMicros && wire.areaMm2() < chosen.areaMm2())) {
                cheaper.add(new PricedWire(wire, micros));
            }
        }
        cheaper.sort(PricedWire.DEAREST_FIRST);
        for (PricedWire priced : cheaper) {
            @Nullable Failed failed = failedWith.apply(priced.wire());
            if (failed != null) {
                return Optional.of(Phrase.of(key, failed.code(), failed.says()));
            }
        }
        return Optional.empty();
    }

    private record PricedWire(LaidWire wire, long micros) {

        /** Of equal prices the thicker. */
        static final Comparator<PricedWire> DEAREST_FIRST =
                Comparator.comparingLong(PricedWire::micros)
                        .thenComparingDouble(priced -> priced.wire().areaMm2())
                        .reversed();
    }

    /** A check that another choice would not pass, and a sentence on it without its stop. */
    private record Failed(String code, Text says) {}

    private @Nullable Failed failedWith(BranchSizing sizing, Wires wires) {
        Device device = sizing.device();
        @Nullable Limit limit = limits.firstMissed(device);
        if (limit != null) {
            return new Failed(
                    limit.code().code(), Phrase.of("device-misses.it", limits.says(device, limit)));
        }
        return sizing.findMissed(wires)
                .map(missed -> new Failed(missed.reason().code().code(), missed.says()))
                .orElse(null);
    }

    private static LaidWire trunkOf(Branch branch) {
        return branch.wires().trunks().getFirst();
    }
}
