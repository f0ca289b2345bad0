package org.fusewright.core.sizing;

/**
 * A wire with one temperature, linear loss and copper's temperature coefficient: C dT/dt = I2 R (1
 * + 0.00393 (T - 20)) - G (T - Ta), solved in closed form. It runs away where its resistance grows
 * faster than its loss; copper's melting point ends it.
 *
 * @param airC around it
 * @param kelvinPerA2 rise for good of a current squared, resistance as at 20 C: R/G
 * @param tauS its time constant at no current: C/G
 */
record LumpedWarming(double airC, double kelvinPerA2, double tauS) implements Warming {

    private static final double MELTS_C = 1083;
    private static final double ALPHA = 0.00393;

    /** A bundle-free thin-wall wire, roughly: 10 A heat 1 mm2 by some 20 K, tau 30 s. */
    static LumpedWarming ofArea(double areaMm2, double airC) {
        return new LumpedWarming(airC, 0.2 * Math.pow(areaMm2, -1.4), 30 * Math.pow(areaMm2, 0.6));
    }

    /** The gain at no rise over the air, and how the gain goes with that rise, both by G. */
    private double gainK(double currentA) {
        return currentA * currentA * kelvinPerA2 * (1 + ALPHA * (airC - 20));
    }

    private double lossShare(double currentA) {
        return 1 - currentA * currentA * kelvinPerA2 * ALPHA;
    }

    @Override
    public double steadyC(double currentA) {
        double share = lossShare(currentA);
        return share <= 0 ? MELTS_C : Math.min(MELTS_C, airC + gainK(currentA) / share);
    }

    @Override
    public double secondsTo(double currentA, double fromC, double toC) {
        if (fromC >= toC) {
            return 0;
        }
        double share = lossShare(currentA);
        double endRiseK = gainK(currentA) / share;
        double left = (toC - airC - endRiseK) / (fromC - airC - endRiseK);
        return left <= 0 ? Double.POSITIVE_INFINITY : -tauS / share * Math.log(left);
    }

    @Override
    public double afterC(double currentA, double fromC, double seconds) {
        double share = lossShare(currentA);
        double endRiseK = gainK(currentA) / share;
        double riseK = endRiseK + (fromC - airC - endRiseK) * Math.exp(-seconds * share / tauS);
        return Math.min(MELTS_C, airC + riseK);
    }
}
