package org.fusewright.core.fitting;

import java.util.Optional;

/**
 * A device or a relay that needs its place in a block.
 *
 * @param id unique within a task
 * @param heightMm what the cap must clear, 0 to 1000 mm
 * @param currentA what it adds to the current of its block, 0 to 100 000 A, reckoned to the
 *     microampere; a relay counts its contact current, and the device that feeds it counts too
 * @param location items share a block only with items of the same location
 * @param besides id of the item that this one likes to sit next to: a relay's own device; an id
 *     that is nowhere in the task is no wish
 * @param place empty: anywhere
 */
public record FittingItem(
        String id,
        Width width,
        double heightMm,
        double currentA,
        String location,
        Optional<String> besides,
        Optional<Place> place) {

    public FittingItem {
        Require.text("id", id);
        Require.range("heightMm of " + id, heightMm, 0, 1_000);
        Require.range("currentA of " + id, currentA, 0, 100_000);
    }

    FittingItem withLocation(String other) {
        return new FittingItem(id, width, heightMm, currentA, other, besides, place);
    }

    FittingItem withPlace(Optional<Place> other) {
        return new FittingItem(id, width, heightMm, currentA, location, besides, other);
    }
}
