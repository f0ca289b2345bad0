package org.fusewright.core.quantity;

import java.nio.charset.StandardCharsets;

/** Prints figures for sentences: rounded half up, no trailing zeros, a point for the decimals. */
public final class Figures {

    private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    /** Enough for any figure with its sign and point. */
    public static final int MOST_SIGNS = Digits.MOST_SIGNS + 1;

    private Figures() {}

    /** At most two decimals: "7.5", "0.42", "12". */
    public static String of(double value) {
        return of(value, 2);
    }

    /**
     * @param decimals most decimals to show, 0 to 6
     */
    public static String of(double value, int decimals) {
        if (!isPrinted(value)) {
            return Double.toString(value);
        }
        byte[] text = new byte[MOST_SIGNS];
        int end = print(value, decimals, text, 0);
        return new String(text, 0, end, StandardCharsets.ISO_8859_1);
    }

    /** Whether {@link #print} can print it: a number of at most twelve digits before the point. */
    public static boolean isPrinted(double value) {
        return Math.abs(value) <= 1e12;
    }

    /**
     * Prints in ASCII.
     *
     * @param decimals most decimals to show, 0 to 6
     * @param at where the figure starts; {@link #MOST_SIGNS} must be free there
     * @return where it ends
     */
    public static int print(double value, int decimals, byte[] text, int at) {
        long parts = Math.round(Math.abs(value) * POWERS[decimals]);
        int start = at;
        if (value < 0 && parts != 0) {
            text[start++] = '-';
        }
        return Digits.print(parts, decimals, text, start);
    }
}
