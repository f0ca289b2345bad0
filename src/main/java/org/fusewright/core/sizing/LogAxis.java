package org.fusewright.core.sizing;

import java.math.BigDecimal;

/**
 * An axis of whole decades, from 10^{@code from} to 10^{@code to}: equal ratios take equal room.
 */
public record LogAxis(int from, int to) {

    public LogAxis {
        if (to <= from) {
            throw new IllegalArgumentException("an axis needs a decade: " + from + " to " + to);
        }
    }

    /** The fewest decades that hold two positive values, one at least. */
    static LogAxis covering(double least, double most) {
        int from = (int) Math.floor(Math.log10(least));
        return new LogAxis(from, Math.max(from + 1, (int) Math.ceil(Math.log10(most))));
    }

    public double least() {
        return valueAt(from);
    }

    public double most() {
        return valueAt(to);
    }

    /** Where a positive value lies: 0 at the axis' start, 1 at its end. */
    public double share(double value) {
        return (Math.log10(value) - from) / (to - from);
    }

    /** The value of a decade's line. */
    public double valueAt(int exponent) {
        return Math.pow(10, exponent);
    }

    /** A decade's value as a plain number: "0.01", "1", "1000". */
    public String labelAt(int exponent) {
        return BigDecimal.ONE.scaleByPowerOfTen(exponent).toPlainString();
    }
}
