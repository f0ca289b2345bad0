package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.List;

/**
 * Keeps the {@link Reasons} of what was asked for last: they follow from the {@link Room} that is
 * needed alone. Several threads may ask at once.
 */
public final class KnownReasons {

    private record Asked(Room room, long costMicros) {}

    private final LastAsked<Asked, List<Rejected>> lastAsked = new LastAsked<>();

    /** As {@link Reasons#list}. */
    public List<Rejected> list(FittingTask task, Arrangement arrangement) {
        if (arrangement.blocks().isEmpty()) {
            return List.of();
        }
        FittingTask placed = Reasons.withoutUnplaced(task, arrangement);
        if (placed.hasPlaces()) {
            return Reasons.list(placed, arrangement.costMicros());
        }
        Asked asked = new Asked(Room.of(placed), arrangement.costMicros());
        @Nullable List<Rejected> known = lastAsked.find(asked);
        if (known == null) {
            // In order, so that the answer depends on nothing but what is asked.
            known = Reasons.list(Room.inOrder(placed), arrangement.costMicros());
            lastAsked.keep(asked, known);
        }
        return known;
    }
}
