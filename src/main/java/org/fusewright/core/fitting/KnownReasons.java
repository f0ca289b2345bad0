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
    public List<Rejected> list(SeatedTask task) {
        Arrangement arrangement = task.arrangement();
        if (arrangement.blocks().isEmpty()) {
            return List.of();
        }
        if (task.room().isEmpty()) {
            return Reasons.list(task.seated(), arrangement.costMicros());
        }
        Asked asked = new Asked(task.room().get(), arrangement.costMicros());
        @Nullable List<Rejected> known = lastAsked.find(asked);
        if (known == null) {
            // In order, so that the answer depends on nothing but what is asked.
            known = Reasons.list(Room.inOrder(task.seated()), arrangement.costMicros());
            lastAsked.keep(asked, known);
        }
        return known;
    }
}
