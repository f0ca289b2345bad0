package org.fusewright.core.fitting;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where an item is to sit.
 *
 * @param block name of the block; items of a location that name the same block share it, and items
 *     that name different blocks do not
 * @param type the {@link BlockForm#block()} that it must be; empty for any
 * @param firstPosition counted from 1; empty for anywhere in the block
 * @param fixed whether it must sit there; otherwise it does so among equally good arrangements
 */
public record Place(String block, Optional<String> type, OptionalInt firstPosition, boolean fixed) {

    public Place {
        Require.text("block", block);
        if (firstPosition.isPresent()) {
            Require.range("position in " + block, firstPosition.getAsInt(), 1, 24);
        }
    }
}
