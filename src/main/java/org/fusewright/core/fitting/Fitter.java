package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the cheapest blocks that hold every device and relay of a job.
 *
 * <p>Exact, and proven: least cost of blocks, caps, wedges and plugs of empty positions, and among
 * equals the fewest blocks. Good effort below that, without proof: a relay in the block of its own
 * device and items in the job's order from block to block ({@link Regrouping}); within a block the
 * seats are the best there are ({@link Seating}).
 *
 * <p>The effort is limited by a count of steps, never by time: the same task gives the same answer
 * everywhere. When the limit is hit the answer is the best one found, and its lower bound says how
 * much it could still be off.
 */
public final class Fitter {

    private static final long STEPS_A_LOCATION = 600_000;

    private Fitter() {}

    /** The arrangement; with no item placed it has no block, whatever spare positions are asked. */
    public static Arrangement fit(FittingTask task) {
        return fit(task, STEPS_A_LOCATION);
    }

    static Arrangement fit(FittingTask task, long stepsALocation) {
        List<String> unplaced = new ArrayList<>();
        List<FittingItem> placed = new ArrayList<>();
        for (FittingItem item : task.items()) {
            if (isTaken(item, task.forms())) {
                placed.add(item);
            } else {
                unplaced.add(item.id());
            }
        }
        if (placed.isEmpty()) {
            return new Arrangement(List.of(), 0, 0, true, unplaced);
        }
        FormTable table = FormTable.of(placed, task.forms(), task.sparePositions());
        SpareSplit split =
                SpareSplit.find(sites(placed, table), task.sparePositions(), stepsALocation);
        List<PlacedBlock> blocks = new ArrayList<>();
        for (Filling filling : split.fillings()) {
            Regrouping.improve(filling);
            blocks.addAll(Seating.seat(filling));
        }
        long cost = split.price() / table.costScale;
        long bound = split.bound() / table.costScale;
        return new Arrangement(blocks, cost, bound, cost == bound, unplaced);
    }

    private static boolean isTaken(FittingItem item, List<BlockForm> forms) {
        for (BlockForm form : forms) {
            if (form.takes(item)) {
                return true;
            }
        }
        return false;
    }

    private static List<Site> sites(List<FittingItem> items, FormTable table) {
        Map<String, List<FittingItem>> byLocation = new LinkedHashMap<>();
        for (FittingItem item : items) {
            byLocation.computeIfAbsent(item.location(), l -> new ArrayList<>()).add(item);
        }
        List<Site> sites = new ArrayList<>();
        byLocation.forEach((location, here) -> sites.add(new Site(location, here, table)));
        return sites;
    }
}
