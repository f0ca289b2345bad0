package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;

import java.util.Arrays;

/**
 * How a lead warms where it lies: for good, and on its way there.
 *
 * <p>For good: I2 R(T) = what the wall conducts = what {@link StillAir} takes away, per metre, with
 * R from the wire's stated highest resistance and copper's temperature coefficient. The conductor's
 * diameter comes from its copper at a fill of 0.70, which fits the diameters of ISO 6722 and SAE
 * J1128 within 8 %; only its logarithm counts.
 *
 * <p>In a bundle the neighbours, loaded to their class too, warm the air round the lead so far that
 * it carries {@link Ampacity#bundleFactor} times what it does alone. The lead keeps its own heat
 * transfer to that warmer air, so an overload is judged among fully loaded neighbours, and no
 * current at all still leaves it as warm as that air.
 *
 * <p>On its way: one temperature for the copper, whose strands all heat alike. Heat capacity:
 * copper 3.45e-3 J/(K mm3) (IEC 60364-5-54) and a part of the wall's. Three quarters of the ring
 * between conductor and largest outside diameter count as wall (the nominal walls of ISO 6722 lie
 * above that), by its mean temperature (Van Wormer 1955, from memory). Heat needs time to enter it:
 * with t the time in which the current alone would heat the copper by 25 K, the share t / (t + Rw
 * Cw) of the wall counts, nearly nothing in a dead short and nearly all in a slow overload. The
 * tests hold this against the wall's heat equation.
 *
 * <p>The loss is a table over the conductor's temperature, straight between its entries. Time to a
 * temperature is then a sum of logarithms, exact also close to the end temperature, where it grows
 * beyond bounds. Temperatures end at copper's melting point.
 *
 * <p>Not covered: wind, altitude, sun, conduit, heat along the conductor. Immutable.
 */
final class WireHeat implements Warming {

    /** Where copper melts: no temperature here passes it. */
    static final double MELTS_C = 1084.6;

    static final double COPPER_FILL = 0.70;
    static final double WALL_COUNTED = 0.75;

    private static final double COPPER_HEAT_J_PER_K_MM3 = 3.45e-3;
    private static final double LAG_RISE_K = 25;
    private static final double ZERO_RESISTANCE_C = -234.5;
    private static final double RESISTANCE_SPAN_K = 254.5;

    /** Entries lie at this many kelvins times 0, 1, 4, 9, ... between surface and air. */
    private static final double FIRST_STEP_K = 0.3;

    private static final int MOST_ENTRIES = 72;
    private static final double[] STEP_K = new double[MOST_ENTRIES];
    private static final double[] STEP_SIXTH_ROOT = new double[MOST_ENTRIES];

    static {
        for (int entry = 0; entry < MOST_ENTRIES; entry++) {
            STEP_K[entry] = FIRST_STEP_K * entry * entry;
            STEP_SIXTH_ROOT[entry] = Math.pow(STEP_K[entry], 1 / 6.0);
        }
    }

    private final double ohmPerMAt20C;
    private final double airC;
    private final double ampacityA;
    private final double aloneA;
    private final double copperHeatJPerKM;
    private final double wallHeatJPerKM;
    private final double wallLagPerA2;
    private final double[] conductorC;
    private final double[] lossWPerM;

    private WireHeat(Wire wire, double ambientC, int bundledLeads) {
        ohmPerMAt20C = wire.milliohmPerM() / 1000;
        double conductorMm = Math.sqrt(wire.copperMm2() / (Math.PI / 4 * COPPER_FILL));
        double outsideMm = Math.max(wire.outsideMm(), conductorMm);
        double outsideM = outsideMm / 1000;
        WallMaterial wall = WallMaterial.of(wire.insulation());
        double logRatio = Math.log(outsideMm / conductorMm);
        double wallKMPerW = wall.resistivityKMPerW / (2 * Math.PI) * logRatio;
        double classC = wire.classC();
        double share = Ampacity.bundleFactor(bundledLeads);
        airC =
                share < 1 && classC > ambientC
                        ? warmedAirC(outsideM, wallKMPerW, ambientC, classC, share)
                        : ambientC;

        double[] temperatures = new double[MOST_ENTRIES];
        double[] losses = new double[MOST_ENTRIES];
        int entries = 0;
        double airK = airC + StillAir.ZERO_CELSIUS_K;
        do {
            double warmerK = STEP_K[entries];
            double loss = StillAir.lossWPerM(outsideM, airK, warmerK, STEP_SIXTH_ROOT[entries]);
            temperatures[entries] = airC + warmerK + loss * wallKMPerW;
            losses[entries] = loss;
            entries++;
        } while (entries < 2 || temperatures[entries - 1] < MELTS_C && entries < MOST_ENTRIES);
        conductorC = Arrays.copyOf(temperatures, entries);
        lossWPerM = Arrays.copyOf(losses, entries);

        ampacityA =
                classC > airC ? Math.sqrt(lossAt(pieceOf(classC), classC) / ohmPerM(classC)) : 0;
        aloneA = ampacityA / share;

        copperHeatJPerKM = 1000 * COPPER_HEAT_J_PER_K_MM3 * wire.copperMm2();
        double ringMm2 = Math.PI / 4 * (outsideMm * outsideMm - conductorMm * conductorMm);
        double wholeWallJPerKM = 1000 * wall.heatJPerKMm3 * WALL_COUNTED * ringMm2;
        wallHeatJPerKM =
                wholeWallJPerKM
                        * meanWallShare(
                                logRatio, 1 - wallKMPerW * slope(pieceOf(Math.max(classC, airC))));
        wallLagPerA2 =
                wallKMPerW
                        * wholeWallJPerKM
                        * ohmPerM(classC + LAG_RISE_K)
                        / (copperHeatJPerKM * LAG_RISE_K);
    }

    /** Prepares the heat of a wire where it lies. */
    static WireHeat of(Wire wire, Surroundings surroundings) {
        return new WireHeat(wire, surroundings.ambient().value(), surroundings.bundledLeads());
    }

    /** The current that brings the conductor to its class in its bundle; 0 in too hot a place. */
    double ampacityA() {
        return ampacityA;
    }

    /** The same without neighbours. */
    double aloneA() {
        return aloneA;
    }

    /** The air round the lead, its neighbours' heat included. */
    double airC() {
        return airC;
    }

    /** Conductor temperature for good. */
    @Override
    public double steadyC(double currentA) {
        double heating = heatingWPerMK(currentA);
        int last = conductorC.length - 1;
        if (heating * (conductorC[last] - ZERO_RESISTANCE_C) >= lossWPerM[last]) {
            return MELTS_C;
        }
        int piece = 0;
        int above = last;
        while (above - piece > 1) {
            int middle = (piece + above) >>> 1;
            if (heating * (conductorC[middle] - ZERO_RESISTANCE_C) >= lossWPerM[middle]) {
                piece = middle;
            } else {
                above = middle;
            }
        }
        double gained = heating * (conductorC[piece] - ZERO_RESISTANCE_C) - lossWPerM[piece];
        return Math.min(MELTS_C, conductorC[piece] + gained / (slope(piece) - heating));
    }

    @Override
    public double secondsTo(double currentA, double fromC, double toC) {
        if (fromC >= toC) {
            return 0;
        }
        if (toC > MELTS_C) {
            return Double.POSITIVE_INFINITY;
        }
        double heating = heatingWPerMK(currentA);
        double reachedC = fromC;
        int piece = pieceOf(fromC);
        double gained = gainedWPerM(heating, piece, reachedC);
        double kelvinsPerWatt = 0;
        while (true) {
            double nextC = Math.min(toC, conductorC[piece + 1]);
            double gainedNext = gainedWPerM(heating, piece, nextC);
            if (gained <= 0 || gainedNext <= 0) {
                return Double.POSITIVE_INFINITY;
            }
            kelvinsPerWatt += (nextC - reachedC) * perLogarithmicMean(gained, gainedNext);
            if (nextC >= toC) {
                return kelvinsPerWatt * heatJPerKM(currentA);
            }
            reachedC = nextC;
            gained = gainedNext;
            piece++;
        }
    }

    /** Temperature after a time at a constant current, warming up or cooling down. */
    @Override
    public double afterC(double currentA, double fromC, double seconds) {
        double heating = heatingWPerMK(currentA);
        double left = seconds / heatJPerKM(currentA);
        double reachedC = Math.min(fromC, MELTS_C);
        int piece = pieceOf(reachedC);
        double gained = gainedWPerM(heating, piece, reachedC);
        if (gained == 0) {
            return reachedC;
        }
        boolean warming = gained > 0;
        while (true) {
            double edgeC = conductorC[warming ? piece + 1 : piece];
            double gainedEdge = gainedWPerM(heating, piece, edgeC);
            boolean passes =
                    warming ? gainedEdge > 0 && edgeC < MELTS_C : gainedEdge < 0 && piece > 0;
            double needed = (edgeC - reachedC) * perLogarithmicMean(gained, gainedEdge);
            if (!passes || needed > left) {
                double endC = reachedC + approachedK(gained, heating - slope(piece), left);
                return Math.min(MELTS_C, endC);
            }
            left -= needed;
            reachedC = edgeC;
            gained = gainedEdge;
            piece += warming ? 1 : -1;
        }
    }

    /** I2 times the resistance's growth with each kelvin. */
    private double heatingWPerMK(double currentA) {
        return currentA * currentA * ohmPerMAt20C / RESISTANCE_SPAN_K;
    }

    private double ohmPerM(double conductorTemperatureC) {
        return ohmPerMAt20C * (conductorTemperatureC - ZERO_RESISTANCE_C) / RESISTANCE_SPAN_K;
    }

    private double heatJPerKM(double currentA) {
        return copperHeatJPerKM + wallHeatJPerKM / (1 + wallLagPerA2 * currentA * currentA);
    }

    /** The piece of the table that a temperature lies in; the first also serves all below it. */
    private int pieceOf(double temperatureC) {
        int piece =
                Math.min(
                        conductorC.length - 2,
                        (int) Math.sqrt(Math.max(0, temperatureC - airC) / FIRST_STEP_K));
        while (piece > 0 && conductorC[piece] > temperatureC) {
            piece--;
        }
        return piece;
    }

    private double slope(int piece) {
        return (lossWPerM[piece + 1] - lossWPerM[piece])
                / (conductorC[piece + 1] - conductorC[piece]);
    }

    private double lossAt(int piece, double temperatureC) {
        return lossWPerM[piece] + slope(piece) * (temperatureC - conductorC[piece]);
    }

    private double gainedWPerM(double heating, int piece, double temperatureC) {
        return heating * (temperatureC - ZERO_RESISTANCE_C) - lossAt(piece, temperatureC);
    }

    /** ln(b/a) / (b - a) of two powers of one sign, without cancellation where they are close. */
    private static double perLogarithmicMean(double a, double b) {
        double x = (b - a) / (a + b);
        double square = x * x;
        if (square < 0.0625) {
            double series =
                    1 + square * (1 / 3.0 + square * (1 / 5.0 + square * (1 / 7.0 + square / 9)));
            return 2 * series / (a + b);
        }
        return Math.log(b / a) / (b - a);
    }

    /** How far dT/dt = gained + rate T comes in a time. */
    private static double approachedK(double gained, double rate, double time) {
        return rate == 0 ? gained * time : gained * Math.expm1(rate * time) / rate;
    }

    /**
     * What a kelvin of the conductor is for the wall's mean temperature, its surface following by
     * so many kelvins.
     */
    private static double meanWallShare(double logRatio, double surfaceFollowsK) {
        if (logRatio < 1e-3) {
            return 1;
        }
        double atConductor = 1 / (2 * logRatio) - 1 / Math.expm1(2 * logRatio);
        return atConductor + (1 - atConductor) * surfaceFollowsK;
    }

    /** Air in which the lead, at its class, gives off share squared of what it does in ambient. */
    private static double warmedAirC(
            double outsideM, double wallKMPerW, double ambientC, double classC, double share) {
        double riseK = classC - ambientC;
        double ambientK = ambientC + StillAir.ZERO_CELSIUS_K;
        double warmerK = riseK;
        double loss = 0;
        for (int round = 0; round < 8; round++) {
            loss = StillAir.lossWPerM(outsideM, ambientK, warmerK);
            double excessK = warmerK + loss * wallKMPerW - riseK;
            warmerK -= excessK / (1 + wallKMPerW * USUAL_EXPONENT * loss / warmerK);
        }
        double wanted = share * share * loss;
        double surfaceC = classC - wanted * wallKMPerW;
        double surfaceK = surfaceC + StillAir.ZERO_CELSIUS_K;
        for (int round = 0; round < 8; round++) {
            loss = StillAir.lossWPerM(outsideM, surfaceK - warmerK, warmerK);
            warmerK *= 1 - (1 - wanted / loss) / USUAL_EXPONENT;
        }
        return surfaceC - warmerK;
    }

    /** Loss grows with about this power of the temperature difference. */
    private static final double USUAL_EXPONENT = 1.2;
}
