package org.fusewright.core.sizing;

/**
 * The air round one lead of a bundle. Its neighbours, loaded to their class too, warm that air so
 * far that at its class the lead gives off the square of its share: then it carries that share of
 * what it carries alone.
 */
final class BundleAir {

    /** About how loss grows with the temperature difference; it steers both searches only. */
    private static final double EXPONENT = 1.25;

    private static final int ROUNDS = 8;

    private BundleAir() {}

    /**
     * The air's temperature; ambient where the lead has all of its share or the class is passed.
     */
    static double warmedC(WireBody body, double ambientC, double classC, double share) {
        if (share >= 1 || classC <= ambientC) {
            return ambientC;
        }
        double lossWPerM = share * share * aloneWPerM(body, ambientC, classC);
        double surfaceC = classC - lossWPerM * body.wallKMPerW();
        double surfaceK = surfaceC + StillAir.ZERO_CELSIUS_K;
        double warmerK = surfaceC - ambientC;
        for (int round = 0; round < ROUNDS; round++) {
            double loss = StillAir.lossWPerM(body.outsideM(), surfaceK - warmerK, warmerK);
            warmerK *= 1 - (1 - lossWPerM / loss) / EXPONENT;
        }
        return surfaceC - warmerK;
    }

    private static double aloneWPerM(WireBody body, double ambientC, double classC) {
        double ambientK = ambientC + StillAir.ZERO_CELSIUS_K;
        double riseK = classC - ambientC;
        double warmerK = riseK;
        double loss = 0;
        for (int round = 0; round < ROUNDS; round++) {
            loss = StillAir.lossWPerM(body.outsideM(), ambientK, warmerK);
            double excessK = warmerK + loss * body.wallKMPerW() - riseK;
            warmerK -= excessK / (1 + body.wallKMPerW() * EXPONENT * loss / warmerK);
        }
        return loss;
    }
}
