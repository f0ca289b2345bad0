package org.fusewright.core.fitting;

import org.fusewright.core.fitting.FormTable.Weights;
import org.fusewright.core.fitting.Keeping.Kept;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the best blocks that hold every device and relay of a job.
 *
 * <p>Exact, and proven: what the {@link Aim} says, usually the least cost of blocks, caps, wedges
 * and plugs of empty positions, and among equals the fewest blocks. Among these, as many items as
 * can be where they were ({@link Keeping}). Good effort below that, without proof: a relay in the
 * block of its own device and items in the job's order from block to block ({@link Regrouping});
 * within a block the seats are the best there are ({@link Seating}).
 *
 * <p>The effort is limited by a count of steps, never by time: the same task gives the same answer
 * everywhere. When the limit is hit the answer is the best one found, and its lower bound says how
 * much it could still be off.
 */
public final class Fitter {

    /** Steps for each location that settle nearly every job; see the document on fitting. */
    public static final long USUAL_STEPS = 600_000;

    private final FittingTask task;
    private final long stepsALocation;
    private final Weights weights;
    private final List<BlockForm> forms;
    private final List<String> unplaced = new ArrayList<>();
    private final List<String> released = new ArrayList<>();
    private final List<FittingItem> placed = new ArrayList<>();

    private final boolean allForms;

    /**
     * @param allForms whether forms count too that another one replaces at no higher cost
     */
    private Fitter(FittingTask task, Aim aim, long stepsALocation, boolean allForms) {
        this.task = task;
        this.allForms = allForms;
        this.stepsALocation = stepsALocation;
        weights = Weights.of(task, aim);
        for (FittingItem item : task.items()) {
            if (isTaken(item, task.forms())) {
                placed.add(item);
            } else {
                unplaced.add(item.id());
            }
        }
        forms =
                allForms
                        ? FormTable.inOrder(placed, task.forms())
                        : FormTable.listWorthwhile(placed, task.forms());
    }

    /** The arrangement; with no item placed it has no block, whatever spare positions are asked. */
    public static Arrangement fit(FittingTask task) {
        return fit(task, Aim.LEAST_COST, USUAL_STEPS);
    }

    /**
     * The arrangement that is best in something.
     *
     * @param stepsALocation at most
     */
    public static Arrangement fit(FittingTask task, Aim aim, long stepsALocation) {
        return new Fitter(task, aim, stepsALocation, false).fit();
    }

    /**
     * The blocks of an arrangement of least cost, without looking at who sits where: a fraction of
     * the work, for tasks that are solved to be compared.
     */
    static Blocks findBlocks(FittingTask task, long stepsALocation) {
        return new Fitter(task, Aim.LEAST_COST, stepsALocation, false).findBlocks();
    }

    /** The items of each location in any form of the task, without wishes. */
    static List<Site> listSites(FittingTask task) {
        Fitter fitter = new Fitter(task, Aim.LEAST_COST, 0, true);
        return fitter.listByLocation().stream().map(fitter::siteWithoutWishes).toList();
    }

    /**
     * The arrangement that keeps most items where they were in given blocks; empty when they hold
     * not all items, or when that is not found out in the usual steps.
     *
     * @param blocks of each form, by location
     */
    static Optional<Arrangement> arrange(
            FittingTask task, Map<String, Map<BlockForm, Integer>> blocks) {
        return new Fitter(task, Aim.LEAST_COST, USUAL_STEPS, true).arrange(blocks);
    }

    /**
     * @param counts of the blocks of each form
     */
    record Blocks(Map<BlockForm, Integer> counts, long costMicros) {}

    private Blocks findBlocks() {
        Map<BlockForm, Integer> counts = new LinkedHashMap<>();
        long cost = 0;
        List<Site> sites = new ArrayList<>();
        for (List<FittingItem> group : listByLocation()) {
            sites.add(site(group));
        }
        for (SpareSplit.Part part :
                SpareSplit.find(sites, task.sparePositions(), stepsALocation).parts()) {
            for (int form : part.filling().form) {
                counts.merge(part.filling().site.table.whole.get(form), 1, Integer::sum);
            }
            cost += part.filling().costMicros();
        }
        return new Blocks(counts, cost);
    }

    private static boolean isTaken(FittingItem item, List<BlockForm> forms) {
        for (BlockForm form : forms) {
            if (form.takes(item)) {
                return true;
            }
        }
        return false;
    }

    private Arrangement fit() {
        if (placed.isEmpty()) {
            return new Arrangement(List.of(), 0, 0, true, unplaced, List.of(), List.of());
        }
        List<List<FittingItem>> groups = listByLocation();
        List<Site> sites = new ArrayList<>(groups.size());
        for (List<FittingItem> group : groups) {
            sites.add(siteWithoutWishes(group));
        }
        SpareSplit split = SpareSplit.find(sites, task.sparePositions(), stepsALocation);
        List<Kept> kept = new ArrayList<>();
        for (int s = 0; s < sites.size(); s++) {
            SpareSplit.Part part = split.parts().get(s);
            long price = part.filling().price();
            kept.add(
                    keep(
                            groups.get(s),
                            part.filling(),
                            (site, steps) ->
                                    LocationSearch.findAtMost(site, part.spare(), price, steps)));
        }
        return seat(kept, split.bound());
    }

    private Optional<Arrangement> arrange(Map<String, Map<BlockForm, Integer>> blocks) {
        List<Kept> kept = new ArrayList<>();
        for (List<FittingItem> group : listByLocation()) {
            Map<BlockForm, Integer> set = blocks.get(group.getFirst().location());
            Optional<Filling> filling =
                    SetFilling.find(siteWithoutWishes(group), set, new Budget(stepsALocation));
            if (filling.isEmpty()) {
                return Optional.empty();
            }
            kept.add(
                    keep(group, filling.get(), (site, steps) -> SetFilling.find(site, set, steps)));
        }
        return Optional.of(seat(kept, 0));
    }

    private Kept keep(List<FittingItem> group, Filling filling, Keeping.Refill refill) {
        return Keeping.keep(group, filling, this::site, refill, stepsALocation);
    }

    private Arrangement seat(List<Kept> locations, long priceAtLeast) {
        List<PlacedBlock> blocks = new ArrayList<>();
        List<String> moved = new ArrayList<>();
        long cost = 0;
        for (Kept kept : locations) {
            Regrouping.improve(kept.filling());
            blocks.addAll(Seating.seat(kept.filling()));
            moved.addAll(kept.moved());
            cost += kept.filling().costMicros();
        }
        long bound = Math.min(cost, weights.costAtLeast(priceAtLeast, blocks.size()));
        return new Arrangement(blocks, cost, bound, cost == bound, unplaced, released, moved);
    }

    /** The items of each location, those that cannot have their fixed place without it. */
    private List<List<FittingItem>> listByLocation() {
        Map<String, List<FittingItem>> byLocation = new LinkedHashMap<>();
        for (FittingItem item : placed) {
            byLocation.computeIfAbsent(item.location(), l -> new ArrayList<>()).add(item);
        }
        List<List<FittingItem>> groups = new ArrayList<>();
        for (List<FittingItem> items : byLocation.values()) {
            Set<String> misfits = listMisfits(items);
            List<FittingItem> group = new ArrayList<>();
            for (FittingItem item : items) {
                boolean misfit = misfits.contains(item.id());
                group.add(misfit ? item.withPlace(Optional.empty()) : item);
            }
            released.addAll(misfits);
            groups.add(group);
        }
        return groups;
    }

    /** The fewest whose fixed places no form can give together with the rest, block by block. */
    private Set<String> listMisfits(List<FittingItem> items) {
        Map<String, List<FittingItem>> fixed = new LinkedHashMap<>();
        for (FittingItem item : items) {
            item.place()
                    .filter(Place::fixed)
                    .ifPresent(
                            place ->
                                    fixed.computeIfAbsent(place.block(), b -> new ArrayList<>())
                                            .add(item));
        }
        Set<String> misfits = new LinkedHashSet<>();
        for (List<FittingItem> members : fixed.values()) {
            List<FittingItem> left = Subsets.largest(members, this::holdTogether);
            members.stream()
                    .filter(item -> !left.contains(item))
                    .forEach(item -> misfits.add(item.id()));
        }
        return misfits;
    }

    private boolean holdTogether(List<FittingItem> members) {
        return members.isEmpty() || NamedBlocks.holdTogether(members, task.forms());
    }

    private static FittingItem withoutWish(FittingItem item) {
        return item.place().isEmpty() || item.place().get().fixed()
                ? item
                : item.withPlace(Optional.empty());
    }

    private Site siteWithoutWishes(List<FittingItem> items) {
        List<FittingItem> free = new ArrayList<>(items.size());
        for (FittingItem item : items) {
            free.add(withoutWish(item));
        }
        return site(free);
    }

    /** The items of a location, each with a place at that place. */
    private Site site(List<FittingItem> items) {
        FormTable table =
                FormTable.of(forms, NamedBlocks.of(items, task.forms(), allForms), weights);
        return new Site(items.getFirst().location(), items, table);
    }
}
