package org.fusewright.core.sizing;

import org.fusewright.core.quantity.Amperes;
import org.fusewright.core.quantity.Celsius;

/**
 * The overload that heats a lead most before its device opens at its latest.
 *
 * <p>Any current up to the least that surely opens the device may flow for good, and at that one
 * the lead settles highest. Above it the device opens the sooner the higher the current, and the
 * lead is hottest somewhere on the way, usually where the opening takes about three of its time
 * constants. The search ends at the current that opens the device within 5 s: from there on {@link
 * ShortCircuitWithstand} answers, with the temperatures that insulation survives once.
 *
 * @param currentA the worst current; where copper melts for good, no worse one is looked for
 * @param conductorC how hot the conductor gets by it
 * @param opensS when the device opens at the latest; infinite when it need not
 */
record WorstOverload(double currentA, double conductorC, double opensS) {

    /**
     * @param start the conductor's temperature when the overload begins
     * @param highest prospective short-circuit current
     */
    static WorstOverload of(TimeCurrentBand band, Warming warming, Celsius start, Amperes highest) {
        double heldA = Math.min(band.surelyOpensA(), highest.value());
        WorstOverload forGood =
                new WorstOverload(heldA, warming.steadyC(heldA), Double.POSITIVE_INFINITY);
        double endA = Math.min(band.clearsFromA(), highest.value());
        boolean melts = forGood.conductorC >= ShortCircuitWithstand.COPPER_MELTS_C;
        return melts || endA <= heldA
                ? forGood
                : new Search(band, warming, start.value(), forGood).upTo(endA);
    }

    /** Behind a device that has carried its rating for long before. */
    static WorstOverload behind(
            TimeCurrentBand band, double ratingA, LaidWire wire, double highestA) {
        Celsius start = new Celsius(wire.heat().steadyC(ratingA));
        return of(band, wire.heat(), start, new Amperes(highestA));
    }

    boolean isForGood() {
        return Double.isInfinite(opensS);
    }

    /**
     * Along one straight line of the device's curve the conductor's temperature has one hump: I2(1
     * - exp(-t/tau)) with t falling as a power of I. So each line is looked at in a few steps, and
     * where a hump shows that may top the worst so far, two parabolas climb it.
     */
    private static final class Search {

        /**
         * Longest step in the logarithm of the current. The steepest line of ISO 8820-3, 600 s at
         * 135 % to 5 s at 200 %, falls by an eighth of the rise at half of it from the top, where
         * the parabolas still find the top within 0.5 K; tested against 20,000 steps.
         */
        private static final double STEP = 0.14;

        /** What a step may miss, as a share of the rise. */
        private static final double MAY_MISS = 0.15;

        private static final int PARABOLAS = 2;

        private final TimeCurrentBand band;
        private final Warming warming;
        private final double startC;
        private final double heldA;
        private WorstOverload worst;

        Search(TimeCurrentBand band, Warming warming, double startC, WorstOverload forGood) {
            this.band = band;
            this.warming = warming;
            this.startC = startC;
            this.heldA = forGood.currentA;
            this.worst = forGood;
        }

        WorstOverload upTo(double endA) {
            double from = Math.log(heldA);
            for (double bendA : band.latestTurningPointsA(heldA, endA)) {
                double bend = Math.log(bendA);
                scan(from, bend);
                from = bend;
            }
            scan(from, Math.log(endA));
            return worst;
        }

        /** Positions are logarithms of the current. */
        private double tryAt(double position) {
            double currentA = Math.max(heldA, Math.exp(position));
            double opensS = band.latestS(currentA);
            double conductorC = warming.afterC(currentA, startC, opensS);
            if (conductorC > worst.conductorC) {
                worst = new WorstOverload(currentA, conductorC, opensS);
            }
            return conductorC;
        }

        private boolean mayTop(double conductorC) {
            return conductorC > worst.conductorC - MAY_MISS * (worst.conductorC - startC);
        }

        /** Up one line until past its hump. */
        private void scan(double from, double to) {
            int steps = Math.max(2, (int) Math.ceil((to - from) / STEP));
            double step = (to - from) / steps;
            double before = tryAt(from);
            double here = tryAt(from + step);
            if (before > here) {
                if (mayTop(before)) {
                    climb(from + step / 2, step / 2, before, tryAt(from + step / 2), here);
                }
                return;
            }
            for (int i = 2; i <= steps; i++) {
                double next = tryAt(i == steps ? to : from + i * step);
                if (here > next) {
                    if (mayTop(here)) {
                        climb(from + (i - 1) * step, step, before, here, next);
                    }
                    return;
                }
                before = here;
                here = next;
            }
            if (mayTop(here)) {
                climb(to - step / 2, step / 2, before, tryAt(to - step / 2), here);
            }
        }

        /** Looks at the top of the parabola through three points, and of the next one. */
        private void climb(double at, double step, double leftC, double midC, double rightC) {
            double left = -1;
            double mid = 0;
            double right = 1;
            for (int i = 0; i < PARABOLAS; i++) {
                double slope = (midC - leftC) / (mid - left);
                double bend = ((rightC - midC) / (right - mid) - slope) / (right - left);
                double top = (left + mid) / 2 - slope / (2 * bend);
                if (!(bend < 0) || !(left < top && top < right)) {
                    return;
                }
                double topC = tryAt(at + top * step);
                if (top < mid ? topC >= midC : topC < midC) {
                    if (top < mid) {
                        right = mid;
                        rightC = midC;
                        mid = top;
                        midC = topC;
                    } else {
                        right = top;
                        rightC = topC;
                    }
                } else if (top < mid) {
                    left = top;
                    leftC = topC;
                } else {
                    left = mid;
                    leftC = midC;
                    mid = top;
                    midC = topC;
                }
            }
        }
    }
}
