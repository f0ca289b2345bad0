package org.fusewright.core.sizing;

/**
 * Opening time against current through some points: a straight line between each two of them when
 * both are drawn in logarithms. What lies outside of the points is the caller's to say.
 */
final class OpeningCurve {

    /** A logarithm needs a time above zero. */
    private static final double LEAST_S = 1e-6;

    private final double[] currentsA;
    private final double[] timesS;
    private final double[] slopes;

    /**
     * @param currentsA rising; none for a curve that nothing states
     */
    OpeningCurve(double[] currentsA, double[] timesS) {
        this.currentsA = currentsA;
        this.timesS = timesS;
        this.slopes = new double[Math.max(0, currentsA.length - 1)];
        for (int i = 0; i < timesS.length; i++) {
            timesS[i] = Math.max(LEAST_S, timesS[i]);
        }
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] =
                    Math.log(timesS[i + 1] / timesS[i]) / Math.log(currentsA[i + 1] / currentsA[i]);
        }
    }

    boolean isStated() {
        return currentsA.length > 0;
    }

    double firstA() {
        return currentsA[0];
    }

    double lastA() {
        return currentsA[currentsA.length - 1];
    }

    double lastS() {
        return timesS[timesS.length - 1];
    }

    double[] currentsA() {
        return currentsA;
    }

    /** The time at one of its points. */
    double timeS(int point) {
        return timesS[point];
    }

    /** The time at a current between the first point and the last. */
    double at(double currentA) {
        int last = slopes.length;
        int i = 0;
        while (i < last && currentA >= currentsA[i + 1]) {
            i++;
        }
        return i == last ? timesS[last] : timesS[i] * Math.pow(currentA / currentsA[i], slopes[i]);
    }

    /** The least current whose time is no longer; infinite when none up to the last point is. */
    double reaches(double withinS) {
        if (timesS[0] <= withinS) {
            return currentsA[0];
        }
        for (int i = 0; i < slopes.length; i++) {
            if (timesS[i + 1] <= withinS) {
                return currentsA[i] * Math.pow(withinS / timesS[i], 1 / slopes[i]);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** The time beyond the last point at constant I2t. */
    double atConstantEnergy(double currentA) {
        double ratio = lastA() / currentA;
        return lastS() * ratio * ratio;
    }
}
