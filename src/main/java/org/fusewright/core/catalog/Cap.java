package org.fusewright.core.catalog;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * The sealed lid of a block.
 *
 * @param fits the blocks that it closes
 * @param clearanceMm the tallest device or relay that it covers
 */
public record Cap(Item item, Set<PartNumber> fits, double clearanceMm) implements Part {

    public Cap {
        fits = Collections.unmodifiableSortedSet(new TreeSet<>(fits));
        Require.positive("clearanceMm", clearanceMm);
    }
}
