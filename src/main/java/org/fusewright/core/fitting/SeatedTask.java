package org.fusewright.core.fitting;

import java.util.Optional;

/**
 * A task, an arrangement of it, and what that seats, as far as costs hang on it: made once for all
 * that is asked about the arrangement.
 *
 * @param arrangement with its cost by the prices of the task
 * @param seated without the items that found no place, and without wishes
 * @param room what is seated asks for; empty where places are named, which tie more together than a
 *     room tells
 */
public record SeatedTask(
        FittingTask whole, Arrangement arrangement, FittingTask seated, Optional<Room> room) {

    public static SeatedTask of(FittingTask task, Arrangement arrangement) {
        FittingTask seated = Reasons.withoutUnplaced(task, arrangement);
        return new SeatedTask(
                task,
                arrangement,
                seated,
                seated.hasPlaces() ? Optional.empty() : Optional.of(Room.of(seated)));
    }
}
