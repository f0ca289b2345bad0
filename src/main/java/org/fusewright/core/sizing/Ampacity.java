package org.fusewright.core.sizing;

import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireSize;

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
 *   <li>below 18 AWG the current shrinks with the area (our own rule: heat balance makes it shrink
 *       more slowly); above 4/0 it stays that of 4/0;
 *   <li>a class between two columns takes the column below. A class under 60 C takes the 60 C
 *       column moved down by the temperature formula;
 *   <li>above 30 C: times sqrt((Tc - Ta)/(Tc - 30)), of which the table's note 1 is the value for
 *       50 C, rounded. No credit for a place colder than 30 C;
 *   <li>leads that run together: the table's note 2 (from memory) 3 leads 0.70, 4 to 6 0.60, 7 to
 *       24 0.50, 25 and more 0.40. The regulation asks for it at 50 V and over; we always do.
 * </ul>
 *
 * <p>Not covered: altitude, wind, conduit, heat from neighbours that are not in the bundle.
 */
final class Ampacity {

    static final String SOURCE = "33 CFR 183.425 table 5";

    private static final double TABLE_AMBIENT_C = 30;
    private static final double AREA_ROUNDING = 0.999;
    private static final int[] CLASSES_C = {60, 75, 80, 90, 105, 125, 200};
    private static final int[] AWG = {18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
    private static final double[][] TABLE_5_A = {
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
    };
    private static final double[] ROW_MM2 = new double[AWG.length];

    static {
        for (int row = 0; row < AWG.length; row++) {
            ROW_MM2[row] = WireSize.ofAwg(AWG[row]).areaMm2();
        }
    }

    private Ampacity() {}

    /** What the table gives for one conductor alone at 30 C, in amperes. */
    static double tabledA(double copperMm2, Celsius classTemperature) {
        int column = 0;
        while (column + 1 < CLASSES_C.length && CLASSES_C[column + 1] <= classTemperature.value()) {
            column++;
        }
        double below60 =
                classTemperature.value() < CLASSES_C[0]
                        ? Math.sqrt(
                                Math.max(0, classTemperature.value() - TABLE_AMBIENT_C)
                                        / (CLASSES_C[0] - TABLE_AMBIENT_C))
                        : 1;
        if (copperMm2 < ROW_MM2[0] * AREA_ROUNDING) {
            return TABLE_5_A[0][column] * copperMm2 / ROW_MM2[0] * below60;
        }
        int row = 0;
        while (row + 1 < ROW_MM2.length && ROW_MM2[row + 1] * AREA_ROUNDING <= copperMm2) {
            row++;
        }
        return TABLE_5_A[row][column] * below60;
    }

    /** The share that is left at a temperature; 0 where it is as hot as the class allows. */
    static double temperatureFactor(Celsius classTemperature, Celsius ambient) {
        if (ambient.value() <= TABLE_AMBIENT_C) {
            return 1;
        }
        double left = classTemperature.value() - ambient.value();
        return left <= 0 ? 0 : Math.sqrt(left / (classTemperature.value() - TABLE_AMBIENT_C));
    }

    /** The share that is left for each of so many current-carrying leads that run together. */
    static double bundleFactor(int leads) {
        if (leads >= 25) {
            return 0.40;
        }
        if (leads >= 7) {
            return 0.50;
        }
        if (leads >= 4) {
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
