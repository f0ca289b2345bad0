package org.fusewright.core.sizing;

import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireSize;

import java.util.Arrays;

/**
 * The current that a copper conductor carries for long without passing its temperature class.
 *
 * <p>Basis: 33 CFR 183.425 table 5 (copper, 30 C around it), AWG 18 to 4/0 by seven temperature
 * classes. Where we had to decide:
 *
 * <ul>
 *   <li>the row is found by copper area (ASTM B258), never by the gauge's number; an area between
 *       two rows carries the row below, so 1.0 mm2 carries what 18 AWG does. One part in a thousand
 *       is allowed for the rounding of stated areas;
 *   <li>below the thinnest row the current shrinks with the area (our own rule: heat balance makes
 *       it shrink more slowly); above the thickest it stays;
 *   <li>a class between two columns takes the column below. A class under 60 C takes the 60 C
 *       column moved down by the temperature formula;
 *   <li>above 30 C: times sqrt((Tc - Ta)/(Tc - 30)), of which the table's note 1 is the value for
 *       50 C, rounded. No credit for a place colder than 30 C;
 *   <li>leads that run together: the lowest of the table's note 2 (from memory), NEC's adjustment
 *       for more than three current-carrying conductors, and IEC 60364-5-52 table B.52.17 (from
 *       memory but for its last row), whose circuits hold two loaded leads each. Between two rows
 *       the one with more leads counts. The regulation asks for it at 50 V and over; we always do.
 * </ul>
 *
 * <p>Beside it, for {@link #conservativeA}: the table of ISO 10133's annex (from memory), 0.75 to
 * 50 mm2 by six temperature classes, also at 30 C, read by the same rules. Rated for boats, both.
 *
 * <p>Not covered: altitude, wind, conduit, heat from neighbours that are not in the bundle.
 */
final class Ampacity {

    static final String SOURCE = "33 CFR 183.425 table 5";

    /** Of both tables, 33 CFR 183.425 table 5 and ISO 10133's annex. */
    static final double TABLE_AMBIENT_C = 30;

    private static final double AREA_ROUNDING = 0.999;

    private static final Table TABLE_5 =
            new Table(
                    new int[] {60, 75, 80, 90, 105, 125, 200},
                    areasOfAwg(18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3),
                    new double[][] {
                        {10, 10, 15, 20, 20, 25, 25},
                        {15, 15, 20, 25, 25, 30, 35},
                        {20, 20, 25, 30, 35, 40, 45},
                        {25, 25, 35, 40, 45, 50, 55},
                        {40, 40, 50, 55, 60, 70, 70},
                        {55, 65, 70, 70, 80, 90, 100},
                        {80, 95, 100, 100, 120, 125, 135},
                        {105, 125, 130, 135, 160, 170, 180},
                        {120, 145, 150, 155, 180, 195, 210},
                        {140, 170, 175, 180, 210, 225, 240},
                        {165, 195, 210, 210, 245, 265, 280},
                        {195, 230, 245, 245, 285, 305, 325},
                        {225, 265, 285, 285, 330, 355, 370},
                        {260, 310, 330, 330, 385, 410, 430},
                        {300, 360, 385, 385, 445, 475, 510}
                    });

    /** The column "85 to 90 C" counts from 85 C. */
    private static final Table ISO_10133 =
            new Table(
                    new int[] {60, 70, 85, 105, 125, 200},
                    new double[] {0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50},
                    new double[][] {
                        {6, 10, 12, 16, 20, 25},
                        {8, 14, 18, 20, 25, 35},
                        {12, 18, 21, 25, 30, 40},
                        {17, 25, 30, 35, 40, 45},
                        {22, 35, 40, 45, 50, 55},
                        {29, 45, 50, 60, 70, 75},
                        {40, 65, 70, 90, 100, 120},
                        {54, 90, 100, 130, 150, 170},
                        {71, 120, 140, 170, 185, 200},
                        {87, 160, 185, 210, 225, 240},
                        {105, 210, 230, 270, 300, 325}
                    });

    private Ampacity() {}

    /** Amperes at 30 C: a row for each copper area, a column for each class, both rising. */
    private record Table(int[] classesC, double[] areasMm2, double[][] amperes) {

        double ratedA(double copperMm2, double classC) {
            int column = 0;
            while (column + 1 < classesC.length && classesC[column + 1] <= classC) {
                column++;
            }
            double firstC = classesC[0];
            double belowFirst =
                    classC < firstC
                            ? Math.sqrt(
                                    Math.max(0, classC - TABLE_AMBIENT_C)
                                            / (firstC - TABLE_AMBIENT_C))
                            : 1;
            if (copperMm2 < areasMm2[0] * AREA_ROUNDING) {
                return amperes[0][column] * copperMm2 / areasMm2[0] * belowFirst;
            }
            int row = 0;
            while (row + 1 < areasMm2.length && areasMm2[row + 1] * AREA_ROUNDING <= copperMm2) {
                row++;
            }
            return amperes[row][column] * belowFirst;
        }
    }

    private static double[] areasOfAwg(int... numbers) {
        return Arrays.stream(numbers).mapToDouble(awg -> WireSize.ofAwg(awg).areaMm2()).toArray();
    }

    /** What 33 CFR 183.425 table 5 gives for one conductor alone at 30 C, in amperes. */
    static double tabledA(double copperMm2, Celsius classTemperature) {
        return TABLE_5.ratedA(copperMm2, classTemperature.value());
    }

    /**
     * The lower of what table 5 and ISO 10133 (from memory) give for one conductor alone at 30 C,
     * in amperes.
     */
    static double conservativeA(double copperMm2, Celsius classTemperature) {
        return Math.min(
                TABLE_5.ratedA(copperMm2, classTemperature.value()),
                ISO_10133.ratedA(copperMm2, classTemperature.value()));
    }

    /** The share that is left at a temperature; 0 where it is as hot as the class allows. */
    static double temperatureFactor(Celsius classTemperature, Celsius ambient) {
        if (ambient.value() <= TABLE_AMBIENT_C) {
            return 1;
        }
        double left = classTemperature.value() - ambient.value();
        return left <= 0 ? 0 : Math.sqrt(left / (classTemperature.value() - TABLE_AMBIENT_C));
    }

    /**
     * The share that is left for each of so many current-carrying leads that run together: 33 CFR
     * 183.425 up to 18 leads and from 25 to 32, IEC 60364-5-52 from 19 to 24 (NEC as well from 21
     * on) and from 33 to 40, NEC above.
     */
    static double bundleFactor(int leads) {
        if (leads > 40) {
            return 0.35;
        }
        if (leads > 32) {
            return 0.38;
        }
        if (leads > 24) {
            return 0.40;
        }
        if (leads > 18) {
            return 0.45;
        }
        if (leads > 6) {
            return 0.50;
        }
        if (leads > 3) {
            return 0.60;
        }
        return leads == 3 ? 0.70 : 1;
    }

    /** What a conductor carries where it lies: temperature and bundle taken off, in amperes. */
    static double allowedA(double copperMm2, Celsius classTemperature, Surroundings surroundings) {
        return tabledA(copperMm2, classTemperature)
                * temperatureFactor(classTemperature, surroundings.ambient())
                * bundleFactor(surroundings.bundledLeads());
    }
}
