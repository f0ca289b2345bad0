package org.fusewright.core.fitting;

/**
 * Currents as whole microamperes, so that a sum does not depend on the order of its terms and ten
 * times 0.1 A is within a limit of 1 A.
 */
final class MicroAmperes {

    private MicroAmperes() {}

    static long of(double currentA) {
        return Math.round(currentA * 1e6);
    }

    /** Like {@link #of}; no limit, or one beyond any sum, is the largest long. */
    static long limit(double limitA) {
        return Math.round(limitA * 1e6);
    }
}
