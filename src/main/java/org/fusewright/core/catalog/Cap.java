package org.fusewright.core.catalog;

import java.util.Collections;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * The sealed lid of a block.
 *
 * @param fits the blocks that it closes
 * @param clearanceMm the tallest device or relay that it covers
 * @param labelWidthMm how much of its top a label may cover, along the positions; empty when the
 *     catalog does not say
 * @param labelHeightMm the same across the positions; given with the width or not at all
 */
public record Cap(
        Item item,
        Set<PartNumber> fits,
        double clearanceMm,
        OptionalDouble labelWidthMm,
        OptionalDouble labelHeightMm)
        implements Part {

    public Cap {
        fits = Collections.unmodifiableSortedSet(new TreeSet<>(fits));
        Require.positive("clearanceMm", clearanceMm);
        labelWidthMm.ifPresent(mm -> Require.positive("labelWidthMm", mm));
        labelHeightMm.ifPresent(mm -> Require.positive("labelHeightMm", mm));
        if (labelWidthMm.isPresent() != labelHeightMm.isPresent()) {
            throw Require.refused("refused.half-a-label");
        }
    }
}
