package org.fusewright.core.check;

import org.fusewright.core.words.Text;

/**
 * One rule applied to one subject. That a limit was exceeded is a value, never an exception.
 *
 * @param unit the unit of value and limit; empty for a plain number
 * @param margin what is left, as a share of the limit: positive inside, negative outside, 0.25
 *     means a quarter of the limit is free; for a limit of zero, minus the amount by which the
 *     value misses it
 * @param says one sentence in shop language
 */
public record Check(
        CheckCode code,
        Subject subject,
        double value,
        double limit,
        String unit,
        double margin,
        Verdict verdict,
        Text says,
        Basis basis) {

    public Check {
        if (!Double.isFinite(value) || !Double.isFinite(limit) || !Double.isFinite(margin)) {
            throw new IllegalArgumentException(
                    code.code() + " of " + subject.text().english() + " is not a number");
        }
    }

    /** A measured value against its limit. */
    public record Measured(double value, double limit, String unit) {

        /** Share of the limit that is left when the value must not exceed it. */
        double marginBelow() {
            return limit == 0 ? 0 - value : (limit - value) / Math.abs(limit);
        }

        /** Share of the limit that the value exceeds it by when it must reach it. */
        double marginAbove() {
            return limit == 0 ? value : (value - limit) / Math.abs(limit);
        }
    }

    /** A value that must not exceed its limit; {@code otherwise} is the verdict when it does. */
    public static Check atMost(
            CheckCode code,
            Subject subject,
            Measured measured,
            Verdict otherwise,
            Text says,
            Basis basis) {
        Verdict verdict = measured.value <= measured.limit ? Verdict.PASS : otherwise;
        return of(code, subject, measured, measured.marginBelow(), verdict, says, basis);
    }

    /** A value that must reach its limit; {@code otherwise} is the verdict when it does not. */
    public static Check atLeast(
            CheckCode code,
            Subject subject,
            Measured measured,
            Verdict otherwise,
            Text says,
            Basis basis) {
        Verdict verdict = measured.value >= measured.limit ? Verdict.PASS : otherwise;
        return of(code, subject, measured, measured.marginAbove(), verdict, says, basis);
    }

    private static Check of(
            CheckCode code,
            Subject subject,
            Measured measured,
            double margin,
            Verdict verdict,
            Text says,
            Basis basis) {
        return new Check(
                code,
                subject,
                measured.value,
                measured.limit,
                measured.unit,
                margin,
                verdict,
                says,
                basis);
    }
}
