package org.fusewright.core.catalog;

/**
 * Joins leads outside the block.
 *
 * @param maxLeads most leads that meet in it; at least 3
 * @param minAreaMm2 smallest copper area of all its leads together
 * @param maxAreaMm2 largest copper area of all its leads together
 */
public record Splice(Item item, int maxLeads, double minAreaMm2, double maxAreaMm2, double milliohm)
        implements Part {

    public Splice {
        if (maxLeads < 3) {
            throw new IllegalArgumentException("maxLeads must be 3 or more, not " + maxLeads);
        }
        Require.range("area", minAreaMm2, maxAreaMm2);
        Require.notNegative("milliohm", milliohm);
    }
}
