package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Keeps the {@link Reasons} of what was asked for last. They follow from what needs room alone: how
 * many devices and relays there are at each location, which caps clear them, and their currents
 * where these could be too much for a block. Most edits of a job change none of it. Several threads
 * may ask at once.
 */
public final class KnownReasons {

    /** Each takes some 2 KB. */
    private static final int MOST_ASKED = 256;

    /** Above the current of any item. */
    private static final long MOST_MICRO_A = 1_000_000_000_000L;

    /**
     * @param room a figure for each item, by location, with a negative one before each location
     */
    private record Asked(
            List<BlockForm> forms, int sparePositions, long costMicros, List<Long> room) {}

    private record Located(long[] figures, List<FittingItem> items) {}

    private final Map<Asked, List<Rejected>> lastAsked =
            new LinkedHashMap<>(16, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<Asked, List<Rejected>> eldest) {
                    return size() > MOST_ASKED;
                }
            };

    /** As {@link Reasons#list}. */
    public List<Rejected> list(FittingTask task, Arrangement arrangement) {
        if (arrangement.blocks().isEmpty()) {
            return List.of();
        }
        FittingTask placed = Reasons.withoutUnplaced(task, arrangement);
        for (FittingItem item : placed.items()) {
            if (item.place().isPresent()) {
                return Reasons.list(placed, arrangement.costMicros());
            }
        }
        List<Located> byLocation = listByLocation(placed);
        Asked asked =
                new Asked(
                        placed.forms(),
                        placed.sparePositions(),
                        arrangement.costMicros(),
                        room(byLocation));
        List<Rejected> known = find(asked);
        if (known == null) {
            known = Reasons.list(inOrder(placed, byLocation), arrangement.costMicros());
            keep(asked, known);
        }
        return known;
    }

    private synchronized @Nullable List<Rejected> find(Asked asked) {
        return lastAsked.get(asked);
    }

    private synchronized void keep(Asked asked, List<Rejected> reasons) {
        lastAsked.put(asked, reasons);
    }

    /** So that the answer depends on nothing but what is asked. */
    private static FittingTask inOrder(FittingTask task, List<Located> byLocation) {
        List<FittingItem> items = new ArrayList<>(task.items().size());
        byLocation.forEach(located -> items.addAll(located.items));
        return new FittingTask(items, task.forms(), task.sparePositions());
    }

    private static List<Long> room(List<Located> byLocation) {
        List<Long> room = new ArrayList<>();
        for (Located located : byLocation) {
            room.add(-1L);
            for (long figure : located.figures) {
                room.add(figure);
            }
        }
        return room;
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
            int[] order = Indexes.sorted(figures.length, Comparator.comparingLong(i -> figures[i]));
            List<FittingItem> inOrder = new ArrayList<>(order.length);
            for (int i : order) {
                inOrder.add(items.get(i));
            }
            Arrays.sort(figures);
            all.add(new Located(figures, inOrder));
        }
        all.sort((a, b) -> Arrays.compare(a.figures, b.figures));
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
