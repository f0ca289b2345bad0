package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.stream.Stream;

/** Diameters and materials that a wire's few stated figures leave open. */
class WireBodyTest {

    /**
     * Sheets that claim ISO 6722: kind of wall, copper, conductor, nominal wall, largest outside.
     */
    static Stream<Arguments> metricSheets() {
        return FactRows.of("iso6722_dimensions").stream()
                .map(
                        row ->
                                sheet(
                                        "ISO 6722 " + row.getField("wall"),
                                        row,
                                        "mm2",
                                        "conductor_dia_mm",
                                        "nominal_wall_mm",
                                        "max_od_mm"));
    }

    /** Sheets that claim SAE J1128, copper from the count of strands. */
    static Stream<Arguments> gaugeSheets() {
        return FactRows.of("sae_j1128_dimensions").stream()
                .map(
                        row ->
                                sheet(
                                        "SAE J1128 " + row.getField("type"),
                                        row,
                                        "copper_area_from_stranding_mm2",
                                        "conductor_dia_mm",
                                        "wall_nom_mm",
                                        "od_max_mm"));
    }

    private static Arguments sheet(String name, NamedCsvRecord row, String... columns) {
        return Arguments.of(
                name,
                FactRows.number(row, columns[0]),
                FactRows.number(row, columns[1]),
                FactRows.number(row, columns[2]),
                FactRows.number(row, columns[3]));
    }

    /**
     * The two thinnest sizes are seven strands in a ring, with more room between them; from 16 mm2
     * on largest diameters leave more room, where copper is most of the heat anyway.
     */
    @ParameterizedTest(name = "{0}, {1} mm2")
    @MethodSource({"metricSheets", "gaugeSheets"})
    void fitsTheSheets(
            String name, double copperMm2, double conductorMm, double wallMm, double outsideMm) {
        double ourMm = WireBody.conductorMm(copperMm2);
        double nominalRing = square(conductorMm + 2 * wallMm) - square(conductorMm);
        double countedRing = 0.75 * (square(outsideMm) - square(ourMm));

        assertThat(ourMm)
                .isCloseTo(conductorMm, Percentage.withPercentage(copperMm2 < 0.35 ? 12 : 6));
        assertThat(countedRing).isLessThan(nominalRing * (copperMm2 < 16 ? 1.03 : 1.21));
    }

    private static double square(double value) {
        return value * value;
    }

    /** IEC 60287-2-1 as quoted: K m/W. */
    @ParameterizedTest(name = "{0}: {1} K m/W")
    @CsvSource({
        "PVC, 5.0",
        "pvc 105, 5.0",
        "XLPE, 3.5",
        "PE, 3.5",
        "EPR, 3.5",
        "Silicone, 5.0",
        "PP, 4.5",
        "PVDF, 5.0",
        "PEEK, 5.0",
        "ETFE, 5.0",
        "'', 5.0"
    })
    void knowsTheWall(String insulation, double kelvinMetrePerWatt) {
        assertThat(WallMaterial.of(insulation).resistivityKMPerW).isEqualTo(kelvinMetrePerWatt);
    }

    /** An unknown wall holds heat back as the worst one does and stores as little as the least. */
    @Test
    void takesTheWorstOfAWallThatItDoesNotKnow() {
        for (WallMaterial material : WallMaterial.values()) {
            assertThat(WallMaterial.UNKNOWN.resistivityKMPerW)
                    .isGreaterThanOrEqualTo(material.resistivityKMPerW);
            assertThat(WallMaterial.UNKNOWN.heatJPerKMm3)
                    .isLessThanOrEqualTo(material.heatJPerKMm3);
        }
    }

    /** IEC 60364-5-54: 3.45e-3 J/(K mm3); ring and Van Wormer's share by integration. */
    @Test
    void storesHeatInCopperAndWall() {
        WireBody body = WireBody.of(TestLeads.thinWall(1.5, 125, "XLPE"));
        double conductorMm = Math.sqrt(1.5 / 0.7 / Math.PI) * 2;
        double area = 0;
        double weighted = 0;
        int rings = 20_000;
        for (int ring = 0; ring < rings; ring++) {
            double diameter = conductorMm + (2.4 - conductorMm) * (ring + 0.5) / rings;
            double part = Math.PI * diameter / 2 * (2.4 - conductorMm) / rings;
            area += part;
            weighted += part * Math.log(2.4 / diameter) / Math.log(2.4 / conductorMm);
        }

        assertThat(body.copperHeatJPerKM()).isCloseTo(5.175, within(1e-9));
        assertThat(body.wallHeatJPerKM()).isCloseTo(0.75 * 2.0 * area, within(1e-6));
        assertThat(body.meanAtConductor()).isCloseTo(weighted / area, within(1e-6));
    }

    @Test
    void takesABareConductorForOneWithoutAWall() {
        WireBody body = WireBody.of(TestLeads.wire(1.5, 1.0, 12.7, 125, "XLPE"));

        assertThat(body.wallKMPerW()).isZero();
        assertThat(body.wallHeatJPerKM()).isZero();
        assertThat(body.outsideM() * 1000).isEqualTo(WireBody.conductorMm(1.5));
    }
}
