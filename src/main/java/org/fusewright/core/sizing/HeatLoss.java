package org.fusewright.core.sizing;

import java.util.Arrays;

/**
 * What a lead loses at each conductor temperature, in watts a metre: a table, straight between its
 * entries, from the air's temperature to where copper melts. Below the first entry the first piece
 * goes on, so that colder copper takes up heat.
 *
 * <p>An entry starts from the surface, whose loss {@link StillAir} knows; the conductor is hotter
 * by what the wall holds back. So no entry needs a search. The entries' distance grows with the
 * temperature. A straight piece lies above the curve that it stands for, so entries are lowered by
 * what it would be too high on average; what is left goes both ways and stays under 0.1 % from 10 K
 * on.
 */
final class HeatLoss {

    /** Where copper melts, in degrees Celsius. */
    static final double COPPER_MELTS_C = 1084.6;

    /** Entries lie at this many kelvins times 0, 1, 4, 9, ... between surface and air. */
    private static final double FIRST_STEP_K = 0.15;

    private static final int MOST_ENTRIES = 100;
    private static final double[] STEP_K = new double[MOST_ENTRIES];
    private static final double[] STEP_SIXTH_ROOT = new double[MOST_ENTRIES];

    /** What is left of an entry's loss when it is lowered. */
    private static final double[] LOWERED = new double[MOST_ENTRIES];

    /** n (n - 1) / 3 where loss grows with the power n = 1.2 of the temperature difference. */
    private static final double TOO_HIGH = 0.08;

    static {
        for (int entry = 0; entry < MOST_ENTRIES; entry++) {
            STEP_K[entry] = FIRST_STEP_K * entry * entry;
            STEP_SIXTH_ROOT[entry] = Math.pow(STEP_K[entry], 1 / 6.0);
            LOWERED[entry] = entry == 0 ? 1 : 1 - TOO_HIGH / (entry * entry);
        }
    }

    private final double[] conductorC;
    private final double[] lossWPerM;

    private HeatLoss(double[] conductorC, double[] lossWPerM) {
        this.conductorC = conductorC;
        this.lossWPerM = lossWPerM;
    }

    static HeatLoss of(WireBody body, double airC) {
        double airK = airC + StillAir.ZERO_CELSIUS_K;
        double[] conductorC = new double[MOST_ENTRIES];
        double[] lossWPerM = new double[MOST_ENTRIES];
        int entries = 0;
        while (entries < 2 || entries < MOST_ENTRIES && conductorC[entries - 1] < COPPER_MELTS_C) {
            double loss =
                    StillAir.lossWPerM(
                            body.outsideM(), airK, STEP_K[entries], STEP_SIXTH_ROOT[entries]);
            conductorC[entries] = airC + STEP_K[entries] + loss * body.wallKMPerW();
            lossWPerM[entries] = loss * LOWERED[entries];
            entries++;
        }
        return new HeatLoss(Arrays.copyOf(conductorC, entries), Arrays.copyOf(lossWPerM, entries));
    }

    int pieces() {
        return conductorC.length - 1;
    }

    /** Where a piece begins; that of {@code pieces()} is where the last one ends. */
    double startC(int piece) {
        return conductorC[piece];
    }

    /** The loss where a piece begins. */
    double startWPerM(int piece) {
        return lossWPerM[piece];
    }

    /** The piece that a temperature lies in. */
    int pieceAt(double temperatureC) {
        double warmerK = Math.max(0, temperatureC - conductorC[0]);
        int piece = Math.min(pieces() - 1, (int) Math.sqrt(warmerK / FIRST_STEP_K));
        while (piece > 0 && conductorC[piece] > temperatureC) {
            piece--;
        }
        return piece;
    }

    double slopeWPerMK(int piece) {
        return (lossWPerM[piece + 1] - lossWPerM[piece])
                / (conductorC[piece + 1] - conductorC[piece]);
    }

    double wattsPerM(int piece, double temperatureC) {
        return lossWPerM[piece] + slopeWPerMK(piece) * (temperatureC - conductorC[piece]);
    }

    double wattsPerM(double temperatureC) {
        return wattsPerM(pieceAt(temperatureC), temperatureC);
    }
}
