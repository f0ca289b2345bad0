package org.fusewright.core.sizing;

import org.fusewright.core.job.Choices;
import org.fusewright.core.quantity.Metres;
import org.fusewright.core.quantity.Millimetres;

/**
 * What to cut for a lead: its route and the job's slack, an allowance for each of its two ends,
 * rounded up to the cutting step (common practice, no published source).
 */
final class CutLength {

    /** Below a thousandth of a millimetre a rest is arithmetic, not wire. */
    static final double ARITHMETIC_REST_MM = 1e-3;

    private CutLength() {}

    static Millimetres of(Metres route, Choices choices) {
        double wantedMm =
                route.value() * 1000 * (1 + choices.slackPercent() / 100)
                        + 2 * choices.endAllowance().value();
        long steps = (long) Math.ceil((wantedMm - ARITHMETIC_REST_MM) / choices.cutStep().value());
        return new Millimetres(Math.max(1, steps) * choices.cutStep().value());
    }
}
