package org.fusewright.core.catalog;

import java.util.List;

/** Several parts sold in one bag under one number. */
public record BaggedSet(Item item, List<Content> contains) implements Part {

    /** So many pieces of one part. */
    public record Content(PartNumber part, int quantity) {

        public Content {
            if (quantity < 1) {
                throw new IllegalArgumentException("quantity must be 1 or more, not " + quantity);
            }
        }
    }

    public BaggedSet {
        contains = List.copyOf(contains);
        if (contains.isEmpty()) {
            throw Require.refused("refused.empty-bag");
        }
        if (contains.stream().map(Content::part).distinct().count() < contains.size()) {
            throw Require.refused("refused.part-twice-in-bag");
        }
    }
}
