package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a task without places asks for, as far as its cost hangs on it: how many devices and relays
 * there are at each location, which caps clear them, and their currents where these could be too
 * much for a block. Most edits of a job change none of it.
 *
 * @param figures one for each item, by location, with a negative one before each location
 */
public record Room(List<BlockForm> forms, int sparePositions, List<Long> figures) {

    /** Above the current of any item. */
    private static final long MOST_MICRO_A = 1_000_000_000_000L;

    private record Located(long[] sorted, long[] figures, List<FittingItem> items) {}

    static Room of(FittingTask task) {
        List<Long> figures = new ArrayList<>(task.items().size() + 4);
        for (Located located : listByLocation(task)) {
            figures.add(-1L);
            for (long figure : located.sorted) {
                figures.add(figure);
            }
        }
        return new Room(task.forms(), task.sparePositions(), figures);
    }

    // The same forms are asked for again and again: only the figures tell rooms apart.
    @Override
    public int hashCode() {
        return 31 * sparePositions + figures.hashCode();
    }

    /** The task in an order that follows from the room alone. */
    static FittingTask inOrder(FittingTask task) {
        List<FittingItem> items = new ArrayList<>(task.items().size());
        for (Located located : listByLocation(task)) {
            int[] order =
                    Indexes.sorted(
                            located.figures.length,
                            Comparator.comparingLong(i -> located.figures[i]));
            for (int i : order) {
                items.add(located.items.get(i));
            }
        }
        return new FittingTask(items, task.forms(), task.sparePositions());
    }

    private static List<Located> listByLocation(FittingTask task) {
        Map<String, List<FittingItem>> byLocation = new LinkedHashMap<>();
        for (FittingItem item : task.items()) {
            byLocation.computeIfAbsent(item.location(), l -> new ArrayList<>()).add(item);
        }
        boolean currents = anyBlockTooWeak(task);
        List<Located> all = new ArrayList<>(byLocation.size());
        for (List<FittingItem> items : byLocation.values()) {
            long[] figures = new long[items.size()];
            for (int i = 0; i < figures.length; i++) {
                figures[i] = figure(items.get(i), task.forms(), currents);
            }
            long[] sorted = figures.clone();
            Arrays.sort(sorted);
            all.add(new Located(sorted, figures, items));
        }
        all.sort((a, b) -> Arrays.compare(a.sorted, b.sorted));
        return all;
    }

    /** Whether currents that a block takes one by one could be too much for it together. */
    private static boolean anyBlockTooWeak(FittingTask task) {
        for (BlockForm form : task.forms()) {
            if (Reasons.isInReach(form, task.items())) {
                return true;
            }
        }
        return false;
    }

    /**
     * The same for items that the same forms clear and carry: how many do tells which ones, as what
     * a low cap clears every higher one clears too. Where currents matter, their own as well.
     */
    private static long figure(FittingItem item, List<BlockForm> forms, boolean currents) {
        int clear = 0;
        int position = 0;
        int total = 0;
        long microA = MicroAmperes.of(item.currentA());
        for (BlockForm form : forms) {
            clear += form.clearanceMm() >= item.heightMm() ? 1 : 0;
            position += MicroAmperes.limit(form.maxPositionA()) >= microA ? 1 : 0;
            total += MicroAmperes.limit(form.maxTotalA()) >= microA ? 1 : 0;
        }
        long kinds = forms.size() + 1L;
        long kind = ((item.width().positions() * kinds + clear) * kinds + position) * kinds + total;
        return kind * MOST_MICRO_A + (currents ? microA : 0);
    }
}
