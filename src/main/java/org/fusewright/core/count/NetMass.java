package org.fusewright.core.count;

/**
 * What the scale shows for some pieces: a whole number of steps, and by chance not always the same.
 *
 * <p>The empty and the full bag are both read to the nearest step. The empty bag's mass lies
 * anywhere between two steps, so the difference is the true mass plus an even share of one step,
 * cut off to whole steps: what is shown is exact on average. The pieces scatter normally.
 *
 * @param meanG expected mass without the empty bag
 * @param scatterG one standard deviation of that mass, from the scatter of the pieces
 * @param resolutionG one step of the scale
 */
public record NetMass(double meanG, double scatterG, double resolutionG) {

    /** Below this share of a step, the scatter no longer matters beside the rounding. */
    private static final double NEXT_TO_NOTHING = 1e-6;

    private static final int HALVINGS = 80;

    public NetMass {
        if (!(meanG >= 0 && scatterG >= 0 && resolutionG > 0)
                || !Double.isFinite(meanG + scatterG + resolutionG)) {
            throw new IllegalArgumentException("not a mass on a scale: " + meanG);
        }
    }

    /**
     * The probability that less than so much is shown.
     *
     * @param markG a whole number of steps
     */
    public double chanceShownBelow(double markG) {
        return 1 - chanceScatterPlusStepBeyond(markG - meanG);
    }

    /**
     * The highest probability, wherever the steps lie, that chance alone shows so much more than
     * the true mean; as likely, so much less.
     */
    public double chanceOff(double offG) {
        return chanceScatterPlusStepBeyond(offG);
    }

    /** What chance alone exceeds no more often than so, above the mean and as often below it. */
    public double offExceededBy(double chance) {
        double low = -40 * scatterG;
        double high = resolutionG + 40 * scatterG;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (chanceScatterPlusStepBeyond(middle) > chance) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** The probability that the scatter and an even share of a step exceed so much together. */
    private double chanceScatterPlusStepBeyond(double offG) {
        double d = resolutionG;
        if (scatterG < NEXT_TO_NOTHING * d) {
            return Math.clamp(1 - offG / d, 0.0, 1.0);
        }
        double integral =
                NormalTail.integral((offG - d) / scatterG) - NormalTail.integral(offG / scatterG);
        return Math.clamp(scatterG / d * integral, 0.0, 1.0);
    }
}
