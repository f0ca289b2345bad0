package org.fusewright.core.fitting;

import java.util.List;
import java.util.Optional;

/**
 * A block of an arrangement.
 *
 * @param name as places name it; empty when none does
 * @param items by position; none when the block is there only for its spare positions
 */
public record PlacedBlock(
        Optional<String> name, BlockForm form, String location, List<PlacedItem> items) {

    public PlacedBlock {
        items = List.copyOf(items);
    }
}
