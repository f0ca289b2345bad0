package org.fusewright.core.fitting;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The least cost, and the fewest blocks at that cost, from an independent solver: OR-Tools CP-SAT.
 * States the rules anew as sums over slots, each of which may become a block of any form; shares
 * nothing with the search but the records. One worker, a fixed seed and a limit that is counted and
 * not timed: the same task gives the same answer.
 *
 * <p>The solver is helped as far as is fair: locations are solved one by one unless spare positions
 * tie them together, items that no rule tells apart are counted and not named, equal slots are in
 * order, and it is told a cost that can be had.
 */
public final class Judge {

    /**
     * @param proven whether the solver proved both to be the least
     */
    public record Verdict(long costMicros, int blocks, boolean proven) {

        private Verdict plus(Verdict other) {
            return new Verdict(
                    costMicros + other.costMicros, blocks + other.blocks, proven && other.proven);
        }
    }

    /** Items that no rule tells apart. */
    private record Kind(
            Width width, double heightMm, double currentA, Optional<Place> place, String id) {

        static Kind of(FittingItem item) {
            Optional<Place> place = item.place().filter(Place::fixed);
            return new Kind(
                    item.width(),
                    item.heightMm(),
                    item.currentA(),
                    place,
                    place.isPresent() ? item.id() : "");
        }

        boolean fits(BlockForm form) {
            return heightMm <= form.clearanceMm()
                    && currentA <= form.maxPositionA()
                    && currentA <= form.maxTotalA()
                    && (width == Width.POSITION || !form.relayPairStarts().isEmpty())
                    && place.flatMap(Place::type).map(form.block()::equals).orElse(true)
                    && firstPosition() <= form.positions()
                    && (width == Width.POSITION
                            || firstPosition() == 0
                            || form.relayPairStarts().contains(firstPosition()));
        }

        int firstPosition() {
            return place.map(p -> p.firstPosition().orElse(0)).orElse(0);
        }

        boolean mayBeIn(String slotName) {
            return place.isEmpty() || place.get().block().equals(slotName);
        }
    }

    private static final String UNNAMED = "";

    private final List<BlockForm> forms;
    private final CpModel model = new CpModel();
    private final LinearExprBuilder price = LinearExpr.newBuilder();
    private final LinearExprBuilder free = LinearExpr.newBuilder();
    private final long scale;

    private Judge(FittingTask task) {
        forms = task.forms();
        scale = task.items().size() + task.sparePositions() + 1L;
    }

    /** Loads the solver, so that this does not count as solving. */
    public static void load() {
        Loader.loadNativeLibraries();
    }

    /**
     * @param known an arrangement that keeps the rules: the solver looks for nothing dearer
     * @param effort the solver's own measure of it, some seconds
     */
    public static Verdict judge(FittingTask task, Arrangement known, double effort) {
        load();
        Map<String, List<FittingItem>> sites = new LinkedHashMap<>();
        for (FittingItem item : task.items()) {
            if (task.forms().stream().anyMatch(Kind.of(withoutPlace(item))::fits)) {
                String site = task.sparePositions() == 0 ? item.location() : "all";
                sites.computeIfAbsent(site, s -> new ArrayList<>()).add(item);
            }
        }
        Verdict verdict = new Verdict(0, 0, true);
        for (Map.Entry<String, List<FittingItem>> site : sites.entrySet()) {
            List<PlacedBlock> blocks =
                    known.blocks().stream()
                            .filter(
                                    block ->
                                            task.sparePositions() > 0
                                                    || block.location().equals(site.getKey()))
                            .toList();
            verdict = verdict.plus(new Judge(task).solve(task, site.getValue(), blocks, effort));
        }
        return verdict;
    }

    private static FittingItem withoutPlace(FittingItem item) {
        return item.withPlace(Optional.empty());
    }

    private Verdict solve(
            FittingTask task, List<FittingItem> items, List<PlacedBlock> known, double effort) {
        long worst = scale * known.stream().mapToLong(Judge::costOf).sum() + known.size();
        long least =
                forms.stream().mapToLong(form -> form.costMicros() * scale + 1).min().orElse(1);
        Map<String, Map<Kind, Integer>> sites = new LinkedHashMap<>();
        for (FittingItem item : items) {
            sites.computeIfAbsent(item.location(), l -> new LinkedHashMap<>())
                    .merge(Kind.of(item), 1, Integer::sum);
        }
        for (Map<Kind, Integer> kinds : sites.values()) {
            int count = kinds.values().stream().mapToInt(Integer::intValue).sum();
            addSite(kinds, (int) Math.min(worst / least, count + task.sparePositions()));
        }
        model.addGreaterOrEqual(free, task.sparePositions());
        model.addLessOrEqual(price, worst);
        model.minimize(price);
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setLinearizationLevel(2)
                .setMaxDeterministicTime(effort);
        CpSolverStatus status = solver.solve(model);
        if (status == CpSolverStatus.UNKNOWN) {
            return new Verdict(worst / scale, (int) (worst % scale), false);
        }
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            throw new AssertionError("the arrangement known breaks a rule: " + status);
        }
        long value = Math.round(solver.objectiveValue());
        return new Verdict(value / scale, (int) (value % scale), status == CpSolverStatus.OPTIMAL);
    }

    private static long costOf(PlacedBlock block) {
        long taken = 0;
        for (PlacedItem item : block.items()) {
            taken += item.item().startsWith("r") || item.item().endsWith("r") ? 2 : 1;
        }
        BlockForm form = block.form();
        return form.costMicros() + (form.positions() - taken) * form.emptyPositionMicros();
    }

    private void addSite(Map<Kind, Integer> kinds, int slots) {
        Map<Kind, LinearExprBuilder> placed = new LinkedHashMap<>();
        kinds.keySet().forEach(kind -> placed.put(kind, LinearExpr.newBuilder()));
        List<String> names =
                kinds.keySet().stream()
                        .flatMap(kind -> kind.place().stream())
                        .map(Place::block)
                        .distinct()
                        .toList();
        names.forEach(name -> addSlot(name, kinds, placed));
        @Nullable IntVar before = null;
        for (int slot = names.size(); slot < slots; slot++) {
            IntVar form = addSlot(UNNAMED, kinds, placed);
            if (before != null) {
                model.addGreaterOrEqual(before, form);
            }
            before = form;
        }
        kinds.forEach((kind, count) -> model.addEquality(placed.get(kind), count));
    }

    /** The number of its form, from 1; 0 when the slot is no block. */
    private IntVar addSlot(
            String name, Map<Kind, Integer> kinds, Map<Kind, LinearExprBuilder> placed) {
        long allMicroA = 0;
        for (Map.Entry<Kind, Integer> kind : kinds.entrySet()) {
            allMicroA += kind.getValue() * microA(kind.getKey().currentA());
        }
        BoolVar[] is = new BoolVar[forms.size()];
        LinearExprBuilder positions = LinearExpr.newBuilder();
        LinearExprBuilder pairs = LinearExpr.newBuilder();
        LinearExprBuilder limit = LinearExpr.newBuilder();
        LinearExprBuilder taken = LinearExpr.newBuilder();
        LinearExprBuilder number = LinearExpr.newBuilder();
        for (int f = 0; f < is.length; f++) {
            BlockForm form = forms.get(f);
            is[f] = model.newBoolVar("");
            positions.addTerm(is[f], form.positions());
            pairs.addTerm(is[f], wholePairs(form, name, kinds));
            limit.addTerm(is[f], microA(Math.min(form.maxTotalA(), allMicroA / 1e6)));
            number.addTerm(is[f], f + 1);
            price.addTerm(is[f], form.costMicros() * scale + 1);
            IntVar empty = model.newIntVar(0, form.positions(), "");
            model.addLessOrEqual(empty, LinearExpr.term(is[f], form.positions()));
            taken.add(empty);
            free.add(empty);
            price.addTerm(empty, form.emptyPositionMicros() * scale);
        }
        if (name.equals(UNNAMED)) {
            model.addAtMostOne(is);
        } else {
            model.addExactlyOne(is);
        }
        LinearExprBuilder relays = LinearExpr.newBuilder();
        LinearExprBuilder current = LinearExpr.newBuilder();
        kinds.forEach(
                (kind, count) -> {
                    if (kind.mayBeIn(name)) {
                        IntVar here = addHere(kind, count, is);
                        placed.get(kind).add(here);
                        taken.addTerm(here, kind.width().positions());
                        relays.addTerm(here, kind.width() == Width.RELAY_PAIR ? 1 : 0);
                        current.addTerm(here, microA(kind.currentA()));
                    }
                });
        model.addEquality(taken, positions);
        model.addLessOrEqual(relays, pairs);
        model.addLessOrEqual(current, limit);
        IntVar form = model.newIntVar(0, is.length, "");
        model.addEquality(form, number);
        return form;
    }

    /** How many of a kind are in a slot. */
    private IntVar addHere(Kind kind, int count, BoolVar[] is) {
        LinearExprBuilder room = LinearExpr.newBuilder();
        for (int f = 0; f < is.length; f++) {
            if (kind.fits(forms.get(f))) {
                room.addTerm(is[f], Math.min(count, forms.get(f).positions()));
            }
        }
        IntVar here = model.newIntVar(0, count, "");
        model.addLessOrEqual(here, room);
        return here;
    }

    /** Relay pairs of which no device has its place in either position. */
    private static long wholePairs(BlockForm form, String name, Map<Kind, Integer> kinds) {
        return form.relayPairStarts().stream()
                .filter(
                        start ->
                                kinds.keySet().stream()
                                        .filter(kind -> kind.width() == Width.POSITION)
                                        .filter(kind -> kind.firstPosition() > 0)
                                        .filter(kind -> kind.mayBeIn(name))
                                        .map(Kind::firstPosition)
                                        .noneMatch(at -> at.equals(start) || at == start + 1))
                .count();
    }

    private static long microA(double currentA) {
        return Math.round(currentA * 1e6);
    }
}
