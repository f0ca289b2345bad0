package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;

/**
 * How a lead warms where it lies: for good, and on its way there.
 *
 * <p>For good: I2 R(T) = what the wall conducts = what {@link StillAir} takes away, per metre, with
 * R from the wire's stated highest resistance and copper's temperature coefficient. In a bundle the
 * lead keeps its own heat transfer to the warmer {@link BundleAir}: an overload is judged among
 * fully loaded neighbours, and with no current it is still as warm as that air.
 *
 * <p>On its way: one temperature for the copper, whose strands all heat alike, so time is one
 * integral over temperature. Heat capacity: the copper's, and the wall's by its mean temperature.
 * Heat needs time to enter the wall, half of wall resistance x wall capacity or less (from the heat
 * equation of a ring with a warming inside). With t the time in which the current alone would heat
 * the copper by 25 K, the share t / (t + that half) of the wall counts: nearly nothing in a dead
 * short, nearly all in a slow overload. For rises of 25 K and more that is on the safe side; the
 * tests hold it against the heat equation.
 *
 * <p>As {@link HeatLoss} is straight in pieces, the integral is a sum of logarithms, exact also
 * close to the end temperature, where it grows beyond bounds. Temperatures end where copper melts.
 *
 * <p>Not covered: wind, altitude, sun, conduit, heat along the conductor. Immutable. Currents are 0
 * or more.
 */
final class WireHeat implements Warming {

    private static final double LAG_RISE_K = 25;
    private static final double ZERO_RESISTANCE_C = -234.5;
    private static final double RESISTANCE_SPAN_K = 254.5;

    private final HeatLoss loss;
    private final double ohmPerMAt20C;
    private final double ampacityA;
    private final double aloneA;
    private final double copperHeatJPerKM;
    private final double wallHeatJPerKM;
    private final double wallLagPerA2;

    private WireHeat(Wire wire, double ambientC, double bundleShare) {
        WireBody body = WireBody.of(wire);
        double classC = wire.classC();
        double airC = BundleAir.warmedC(body, ambientC, classC, bundleShare);
        loss = HeatLoss.of(body, airC);
        ohmPerMAt20C = wire.milliohmPerM() / 1000;
        ampacityA = classC > airC ? Math.sqrt(loss.wattsPerM(classC) / ohmPerM(classC)) : 0;
        aloneA = ampacityA / bundleShare;
        double surfaceFollows =
                1 - body.wallKMPerW() * loss.slopeWPerMK(loss.pieceAt(Math.max(classC, airC)));
        copperHeatJPerKM = body.copperHeatJPerKM();
        wallHeatJPerKM =
                body.wallHeatJPerKM()
                        * (body.meanAtConductor() + (1 - body.meanAtConductor()) * surfaceFollows);
        wallLagPerA2 =
                body.wallKMPerW()
                        * body.wallHeatJPerKM()
                        * ohmPerM(classC + LAG_RISE_K)
                        / (2 * copperHeatJPerKM * LAG_RISE_K);
    }

    /** Prepares the heat of a wire where it lies. */
    static WireHeat of(Wire wire, Surroundings surroundings) {
        return new WireHeat(
                wire,
                surroundings.ambient().value(),
                Ampacity.bundleFactor(surroundings.bundledLeads()));
    }

    /** The current that brings the conductor to its class in its bundle; 0 in too hot a place. */
    double ampacityA() {
        return ampacityA;
    }

    /** The same without neighbours. */
    double aloneA() {
        return aloneA;
    }

    /** The air round the lead, warmed by its neighbours. */
    double airC() {
        return loss.startC(0);
    }

    /** Conductor temperature for good. */
    @Override
    public double steadyC(double currentA) {
        double heating = heatingWPerMK(currentA);
        if (startGainsWPerM(heating, loss.pieces()) >= 0) {
            return HeatLoss.COPPER_MELTS_C;
        }
        int piece = 0;
        int above = loss.pieces();
        while (above - piece > 1) {
            int middle = (piece + above) >>> 1;
            if (startGainsWPerM(heating, middle) >= 0) {
                piece = middle;
            } else {
                above = middle;
            }
        }
        double riseK = startGainsWPerM(heating, piece) / (loss.slopeWPerMK(piece) - heating);
        return Math.min(HeatLoss.COPPER_MELTS_C, loss.startC(piece) + riseK);
    }

    @Override
    public double secondsTo(double currentA, double fromC, double toC) {
        if (fromC >= toC) {
            return 0;
        }
        if (toC > HeatLoss.COPPER_MELTS_C) {
            return Double.POSITIVE_INFINITY;
        }
        double heating = heatingWPerMK(currentA);
        double reachedC = fromC;
        int piece = loss.pieceAt(fromC);
        double gained = gainsWPerM(heating, piece, reachedC);
        double kelvinsPerWatt = 0;
        while (true) {
            double nextC = Math.min(toC, loss.startC(piece + 1));
            double gainedNext = gainsWPerM(heating, piece, nextC);
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
        double reachedC = Math.min(fromC, HeatLoss.COPPER_MELTS_C);
        int piece = loss.pieceAt(reachedC);
        double gained = gainsWPerM(heating, piece, reachedC);
        if (gained == 0) {
            return reachedC;
        }
        boolean warms = gained > 0;
        while (true) {
            double edgeC = loss.startC(warms ? piece + 1 : piece);
            double gainedEdge = gainsWPerM(heating, piece, edgeC);
            boolean passes =
                    warms
                            ? gainedEdge > 0 && edgeC < HeatLoss.COPPER_MELTS_C
                            : gainedEdge < 0 && piece > 0;
            double needed = (edgeC - reachedC) * perLogarithmicMean(gained, gainedEdge);
            if (!passes || needed > left) {
                double endC =
                        reachedC + approachedK(gained, heating - loss.slopeWPerMK(piece), left);
                return Math.min(HeatLoss.COPPER_MELTS_C, endC);
            }
            left -= needed;
            reachedC = edgeC;
            gained = gainedEdge;
            piece += warms ? 1 : -1;
        }
    }

    /** Whether it is of a wire of the same make in the same place. */
    @Override
    public boolean equals(Object other) {
        return other instanceof WireHeat heat
                && heat.ohmPerMAt20C == ohmPerMAt20C
                && heat.ampacityA == ampacityA
                && heat.aloneA == aloneA
                && heat.copperHeatJPerKM == copperHeatJPerKM
                && heat.wallHeatJPerKM == wallHeatJPerKM
                && heat.airC() == airC();
    }

    @Override
    public int hashCode() {
        return Double.hashCode(ampacityA);
    }

    /** I2 times what the resistance grows with each kelvin. */
    private double heatingWPerMK(double currentA) {
        return currentA * currentA * ohmPerMAt20C / RESISTANCE_SPAN_K;
    }

    private double ohmPerM(double temperatureC) {
        return ohmPerMAt20C * (temperatureC - ZERO_RESISTANCE_C) / RESISTANCE_SPAN_K;
    }

    private double heatJPerKM(double currentA) {
        return copperHeatJPerKM + wallHeatJPerKM / (1 + wallLagPerA2 * currentA * currentA);
    }

    /** Heat made less heat lost at a temperature of a piece. */
    private double gainsWPerM(double heating, int piece, double temperatureC) {
        return heating * (temperatureC - ZERO_RESISTANCE_C) - loss.wattsPerM(piece, temperatureC);
    }

    private double startGainsWPerM(double heating, int piece) {
        return heating * (loss.startC(piece) - ZERO_RESISTANCE_C) - loss.startWPerM(piece);
    }

    /** ln(b/a) / (b - a) of two powers of one sign, also where they are close. */
    private static double perLogarithmicMean(double a, double b) {
        double x = (b - a) / (a + b);
        double square = x * x;
        if (square > 0.0625) {
            return Math.log(b / a) / (b - a);
        }
        double series =
                1 + square * (1 / 3.0 + square * (1 / 5.0 + square * (1 / 7.0 + square / 9)));
        return 2 * series / (a + b);
    }

    /** How far a temperature moves in a time that gains so much now and rate more with each K. */
    private static double approachedK(double gained, double rate, double time) {
        return rate == 0 ? gained * time : gained * Math.expm1(rate * time) / rate;
    }
}
