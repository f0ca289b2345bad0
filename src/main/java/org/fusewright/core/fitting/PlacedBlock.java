package org.fusewright.core.fitting;

import java.util.List;

/**
 * A block of an arrangement.
 *
 * @param items by position; none when the block is there only for its spare positions
 */
public record PlacedBlock(BlockForm form, String location, List<PlacedItem> items) {

    public PlacedBlock {
        items = List.copyOf(items);
    }
}
