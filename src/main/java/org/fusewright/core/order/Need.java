package org.fusewright.core.order;

import org.fusewright.core.catalog.PartNumber;

/** So many pieces (metres, for wire) of one part that must be bought. */
public record Need(PartNumber part, int quantity) {

    /** No shop buys more of one part at a time. */
    public static final int MOST = 10_000_000;

    public Need {
        if (quantity < 1 || quantity > MOST) {
            throw new IllegalArgumentException(
                    "quantity must be 1 to " + MOST + ", not " + quantity);
        }
    }
}
