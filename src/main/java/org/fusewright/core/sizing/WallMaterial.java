package org.fusewright.core.sizing;

/**
 * What the wall of a lead does with heat. Thermal resistivities by IEC 60287-2-1; heat capacities
 * by IEC 60949 for PVC and EPR, lower than its figure for polyethylene, and our own low figures for
 * silicone and polypropylene (all heat capacities from memory). A name that is not listed gets the
 * worst of both.
 */
enum WallMaterial {
    PVC(5.0, 1.7e-3, "PVC"),
    POLYETHYLENE(3.5, 2.0e-3, "XLPE", "PE", "HDPE", "LDPE"),
    RUBBER(3.5, 2.0e-3, "EPR"),
    SILICONE(5.0, 1.5e-3, "SILICONE"),
    POLYPROPYLENE(4.5, 1.7e-3, "PP"),
    UNKNOWN(5.0, 1.5e-3);

    private static final WallMaterial[] KNOWN = {
        PVC, POLYETHYLENE, RUBBER, SILICONE, POLYPROPYLENE
    };

    final double resistivityKMPerW;
    final double heatJPerKMm3;
    private final String[] names;

    WallMaterial(double resistivityKMPerW, double heatJPerKMm3, String... names) {
        this.resistivityKMPerW = resistivityKMPerW;
        this.heatJPerKMm3 = heatJPerKMm3;
        this.names = names;
    }

    /** By the first word of a catalog's name for it. */
    static WallMaterial of(String insulation) {
        for (WallMaterial material : KNOWN) {
            for (String name : material.names) {
                if (insulation.regionMatches(true, 0, name, 0, name.length())
                        && (insulation.length() == name.length()
                                || !Character.isLetterOrDigit(insulation.charAt(name.length())))) {
                    return material;
                }
            }
        }
        return UNKNOWN;
    }
}
