package org.fusewright.core.catalog;

/**
 * A crimp terminal for a sealed cavity.
 *
 * @param minAreaMm2 smallest copper area that its crimp holds
 * @param maxAreaMm2 largest copper area that its crimp holds
 * @param maxCurrentA most continuous current
 * @param contactMilliohm resistance of crimp and contact together
 * @param stripMm insulation to strip from the lead's end
 */
public record Terminal(
        Item item,
        String family,
        double minAreaMm2,
        double maxAreaMm2,
        double maxCurrentA,
        double contactMilliohm,
        double stripMm)
        implements Part {

    public Terminal {
        Require.range("area", minAreaMm2, maxAreaMm2);
        Require.positive("maxCurrentA", maxCurrentA);
        Require.notNegative("contactMilliohm", contactMilliohm);
        Require.positive("stripMm", stripMm);
    }

    public boolean accepts(double areaMm2) {
        return minAreaMm2 <= areaMm2 && areaMm2 <= maxAreaMm2;
    }
}
