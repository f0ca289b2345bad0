package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which seal closes on a wire, from the outside diameters of ISO 6722 and SAE J1128 (data sheets
 * that claim them). The stock's seals run 1.2-1.7, 1.6-2.2, 2.1-2.7, 2.6-3.4, 3.3-4.0, 3.9-4.8 mm.
 */
class SealChoiceTest {

    private static final Stock STOCK = TestStock.usual().build();

    private static String sealFor(double outsideMm) {
        WireSize size = WireSize.parse("1 mm2").orElseThrow();
        Wire wire =
                new Wire(
                        TestStock.item("W"),
                        TestStock.WIRES,
                        size,
                        new WireColour("RD"),
                        size.areaMm2(),
                        outsideMm,
                        18.5,
                        125,
                        "XLPE");
        return STOCK.findSeal(TestStock.FAMILY, wire).map(s -> s.number().value()).orElse("none");
    }

    @ParameterizedTest(name = "ISO 6722 {0} wall, {1} mm2: {2} mm, seal {3}")
    @CsvSource({
        "thin, 0.35, 1.3, S1",
        "thin, 0.5, 1.6, S1",
        "thin, 0.75, 1.9, S2",
        "thin, 1, 2.1, S2",
        "thin, 1.5, 2.4, S3",
        "thin, 2, 2.8, S4",
        "thin, 2.5, 3.0, S4",
        "thin, 3, 3.4, S4",
        "thin, 4, 3.7, S5",
        "thin, 6, 4.3, S6",
        "thin, 16, 7.2, none",
        "thick, 0.5, 2.3, S3",
        "thick, 0.75, 2.5, S3",
        "thick, 1, 2.7, S3",
        "thick, 1.5, 3.0, S4",
        "thick, 2, 3.3, S4",
        "thick, 2.5, 3.6, S5",
        "thick, 3, 4.1, S6",
        "thick, 4, 4.4, S6",
        "thick, 6, 5.0, none",
        "thick, 10, 6.5, none",
        "thick, 16, 8.3, none",
    })
    void fitsVehicleWire(String wall, double areaMm2, double mostOutsideMm, String seal) {
        assertThat(sealFor(mostOutsideMm)).isEqualTo(seal);
    }

    @ParameterizedTest(name = "SAE J1128 {0} {1} gauge: {2} to {3} mm, seal {4}")
    @CsvSource({
        "TXL, 20, 1.8, 1.9, S2",
        "TXL, 18, 2.0, 2.2, S2",
        "TXL, 16, 2.3, 2.4, S3",
        "TXL, 14, 2.6, 2.7, S3",
        "TXL, 12, 3.2, 3.3, S4",
        "TXL, 10, 3.9, 4.0, S5",
        "GXL, 20, 2.15, 2.4, S3",
        "GXL, 18, 2.4, 2.5, S3",
        "GXL, 16, 2.7, 2.9, S4",
        "GXL, 14, 3.0, 3.2, S4",
        "GXL, 12, 3.6, 3.8, S5",
        "GXL, 10, 4.5, 4.7, S6",
        "SXL, 18, 2.7, 3.0, S4",
        "SXL, 16, 3.1, 3.4, S4",
        "SXL, 14, 3.6, 3.9, S5",
        "SXL, 12, 4.2, 4.6, S6",
        "SXL, 10, 5.0, 5.3, none",
    })
    void fitsGaugeWire(String type, String gauge, double nominalMm, double mostMm, String seal) {
        assertThat(sealFor(mostMm)).isEqualTo(seal);
    }

    /** Every row of ISO 6722 up to 4.3 mm gets a seal whose range holds its largest diameter. */
    @ParameterizedTest(name = "ISO 6722 {0} wall, {1} mm2, {2}")
    @CsvFileSource(resources = "/facts/iso6722_dimensions.csv", numLinesToSkip = 1)
    void sealsEveryVehicleWireInItsRange(
            String wall,
            double areaMm2,
            String type,
            int strands,
            double strandMm,
            double conductorMm,
            String milliohm,
            double wallMm,
            double leastWallMm,
            double mostOutsideMm) {
        boolean inRange = mostOutsideMm >= 1.2 && mostOutsideMm <= 4.8;

        assertThat(!sealFor(mostOutsideMm).equals("none")).isEqualTo(inRange);
    }

    @Test
    void acceptsBothEndsOfItsRangeAndNothingBeyond() {
        Seal seal = new Seal(TestStock.item("S"), "F", 1.6, 2.2);

        assertThat(seal.accepts(1.6)).isTrue();
        assertThat(seal.accepts(2.2)).isTrue();
        assertThat(seal.accepts(1.59)).isFalse();
        assertThat(seal.accepts(2.21)).isFalse();
    }
}
