package org.fusewright.core.sizing;

import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;

import java.math.BigDecimal;

/** Wires made up of a few figures, and places to lay them. */
final class TestLeads {

    private TestLeads() {}

    static Wire wire(
            double copperMm2,
            double outsideMm,
            double milliohmPerM,
            double classC,
            String insulation) {
        return new Wire(
                TestStock.item("W"),
                "test",
                WireSize.ofMetric(BigDecimal.ONE),
                new WireColour("WH"),
                copperMm2,
                outsideMm,
                milliohmPerM,
                classC,
                insulation);
    }

    /** The thin-wall sizes of ISO 6722: copper, largest diameter, highest resistance. */
    static Wire thinWall(double copperMm2, double classC, String insulation) {
        double[] row =
                switch (Double.toString(copperMm2)) {
                    case "0.5" -> new double[] {1.6, 37.1};
                    case "0.75" -> new double[] {1.9, 24.7};
                    case "1.0" -> new double[] {2.1, 18.5};
                    case "1.5" -> new double[] {2.4, 12.7};
                    case "2.5" -> new double[] {3.0, 7.6};
                    case "4.0" -> new double[] {3.7, 4.71};
                    case "6.0" -> new double[] {4.3, 3.14};
                    case "16.0" -> new double[] {7.2, 1.16};
                    default -> throw new IllegalArgumentException("no such size: " + copperMm2);
                };
        return wire(copperMm2, row[0], row[1], classC, insulation);
    }

    static Surroundings in(double ambientC, int bundledLeads) {
        Celsius ambient = new Celsius(ambientC);
        return new Surroundings(ambient, ambient, bundledLeads);
    }
}
