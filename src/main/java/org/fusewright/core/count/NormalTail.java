package org.fusewright.core.count;

/** The upper tail of the standard normal distribution. */
final class NormalTail {

    /** From here on the series would lose digits, and the continued fraction converges fast. */
    private static final double FAR = 3;

    private static final int FRACTION_TERMS = 200;

    private NormalTail() {}

    /** The density at x. */
    static double density(double x) {
        return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
    }

    /**
     * The probability of more than x: near the middle by the series of G. Marsaglia, "Evaluating
     * the Normal Distribution", J. Statistical Software 11 (2004), farther out by Laplace's
     * continued fraction (Abramowitz and Stegun 26.2.14); both from memory, tested against tables.
     */
    static double of(double x) {
        if (x < 0) {
            return 1 - of(-x);
        }
        if (x > FAR) {
            double fraction = x;
            for (int k = FRACTION_TERMS; k >= 1; k--) {
                fraction = x + k / fraction;
            }
            return density(x) / fraction;
        }
        double sum = x;
        double term = x;
        for (int odd = 3; Math.abs(term) > Math.ulp(sum); odd += 2) {
            term *= x * x / odd;
            sum += term;
        }
        return 0.5 - density(x) * sum;
    }

    /** The integral of the tail from x on. */
    static double integral(double x) {
        return density(x) - x * of(x);
    }
}
