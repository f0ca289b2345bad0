package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;

/**
 * A wire as heat sees it: a round conductor in a round wall, per metre.
 *
 * <p>The conductor's diameter comes from its copper at a fill of 0.70, which fits the diameters of
 * ISO 6722 and SAE J1128 sheets within 6 % from 0.35 mm2 on; only its logarithm counts. Outside is
 * the stated largest diameter. As a store of heat only three quarters of the ring between the two
 * count, which is what the sheets' nominal walls hold.
 *
 * @param outsideM diameter of the surface
 * @param wallKMPerW thermal resistance of the wall
 * @param copperHeatJPerKM heat capacity of the copper, 3.45e-3 J/(K mm3) by IEC 60364-5-54
 * @param wallHeatJPerKM heat capacity of the wall
 * @param meanAtConductor share of the conductor's temperature in the wall's mean temperature, the
 *     rest being the surface's (Van Wormer 1955, from memory)
 */
record WireBody(
        double outsideM,
        double wallKMPerW,
        double copperHeatJPerKM,
        double wallHeatJPerKM,
        double meanAtConductor) {

    private static final double FILL = 0.70;
    private static final double WALL_COUNTED = 0.75;
    private static final double COPPER_J_PER_K_MM3 = 3.45e-3;

    static WireBody of(Wire wire) {
        double conductorMm = conductorMm(wire.copperMm2());
        double outsideMm = Math.max(wire.outsideMm(), conductorMm);
        double logRatio = Math.log(outsideMm / conductorMm);
        double ringMm2 = Math.PI / 4 * (outsideMm * outsideMm - conductorMm * conductorMm);
        WallMaterial material = WallMaterial.of(wire.insulation());
        return new WireBody(
                outsideMm / 1000,
                material.resistivityKMPerW / (2 * Math.PI) * logRatio,
                1000 * COPPER_J_PER_K_MM3 * wire.copperMm2(),
                1000 * material.heatJPerKMm3 * WALL_COUNTED * ringMm2,
                meanAtConductor(logRatio));
    }

    /** Diameter of a strand bundle that holds so much copper. */
    static double conductorMm(double copperMm2) {
        return Math.sqrt(copperMm2 / (Math.PI / 4 * FILL));
    }

    private static double meanAtConductor(double logRatio) {
        return logRatio < 1e-3 ? 0.5 : 1 / (2 * logRatio) - 1 / Math.expm1(2 * logRatio);
    }
}
