package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Keeps the {@link Reasons} of what was asked for last: they follow from the {@link Room} that is
 * needed alone. Several threads may ask at once.
 */
public final class KnownReasons {

    /** Each takes some 2 KB. */
    private static final int MOST_ASKED = 256;

    private record Asked(Room room, long costMicros) {}

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
        Asked asked = new Asked(Room.of(placed), arrangement.costMicros());
        List<Rejected> known = find(asked);
        if (known == null) {
            // In order, so that the answer depends on nothing but what is asked.
            known = Reasons.list(Room.inOrder(placed), arrangement.costMicros());
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
}
