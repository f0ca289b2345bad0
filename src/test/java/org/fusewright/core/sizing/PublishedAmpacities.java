package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.WireSize;

/**
 * The wires that published tables of ampacity are about. The tables give copper and class only, so
 * the rest is assumed: walls as in boat cable and building wire (0.76, 1.14, 1.52, 2.03 mm, from
 * memory), stranded resistance 1.023 times that of the solid copper (NEC chapter 9 table 8), PVC to
 * 105 C, XLPE to 125 C, silicone above.
 */
final class PublishedAmpacities {

    private static final double STRANDED = 1.023;

    private PublishedAmpacities() {}

    static Wire boatWire(String gauge, double classC) {
        return boatWire(WireSize.parse(gauge + " AWG").orElseThrow().areaMm2(), classC);
    }

    static Wire boatWire(double copperMm2, double classC) {
        return wire(copperMm2, wallMm(copperMm2), classC, insulation(classC));
    }

    static Wire wire(double copperMm2, double wallMm, double classC, String insulation) {
        return TestLeads.wire(
                copperMm2,
                WireBody.conductorMm(copperMm2) + 2 * wallMm,
                STRANDED * 17.241 / copperMm2,
                classC,
                insulation);
    }

    private static double wallMm(double copperMm2) {
        if (copperMm2 < 6.5) {
            return 0.76;
        }
        if (copperMm2 < 10.5) {
            return 1.14;
        }
        return copperMm2 < 35.5 ? 1.52 : 2.03;
    }

    private static String insulation(double classC) {
        if (classC <= 105) {
            return "PVC";
        }
        return classC <= 125 ? "XLPE" : "silicone";
    }
}
