package org.fusewright.core.catalog;

/**
 * An in-line holder for a main device near the source.
 *
 * @param form the blade form that it takes
 * @param maxCurrentA most continuous current
 * @param minAreaMm2 smallest copper area of its leads
 * @param maxAreaMm2 largest copper area of its leads
 * @param contactMilliohm resistance of its contacts together
 */
public record Holder(
        Item item,
        BladeForm form,
        double maxCurrentA,
        double minAreaMm2,
        double maxAreaMm2,
        double contactMilliohm)
        implements Part {

    public Holder {
        Require.positive("maxCurrentA", maxCurrentA);
        Require.range("area", minAreaMm2, maxAreaMm2);
        Require.notNegative("contactMilliohm", contactMilliohm);
    }

    public boolean accepts(double areaMm2) {
        return minAreaMm2 <= areaMm2 && areaMm2 <= maxAreaMm2;
    }
}
