package org.fusewright.core.catalog;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * A locking wedge (terminal position assurance); it seats only when every terminal is home.
 *
 * @param fits the blocks that it locks
 */
public record Wedge(Item item, Set<PartNumber> fits) implements Part {

    public Wedge {
        fits = Collections.unmodifiableSortedSet(new TreeSet<>(fits));
    }
}
