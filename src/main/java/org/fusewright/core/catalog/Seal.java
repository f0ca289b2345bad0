package org.fusewright.core.catalog;

/** A single-wire seal; the range is that of the lead's outside diameter in millimetres. */
public record Seal(Item item, String family, double minOutsideMm, double maxOutsideMm)
        implements Part {

    public Seal {
        Require.range("outside diameter", minOutsideMm, maxOutsideMm);
    }

    public boolean accepts(double outsideMm) {
        return minOutsideMm <= outsideMm && outsideMm <= maxOutsideMm;
    }
}
