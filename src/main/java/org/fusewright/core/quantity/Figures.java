package org.fusewright.core.quantity;

import java.nio.charset.StandardCharsets;

/** Prints figures for sentences: rounded half up, no trailing zeros, a point for the decimals. */
public final class Figures {

    private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    /** Enough for a sign, thirteen digits before the point and six after it. */
    public static final int MOST_SIGNS = 24;

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
        int start = print(value, decimals, text);
        return new String(text, start, MOST_SIGNS - start, StandardCharsets.ISO_8859_1);
    }

    /** Whether {@link #print} can print it: a number of at most twelve digits before the point. */
    public static boolean isPrinted(double value) {
        return Math.abs(value) <= 1e12;
    }

    /**
     * Prints at the end of a text of {@link #MOST_SIGNS}, in ASCII.
     *
     * @param decimals most decimals to show, 0 to 6
     * @return where the figure starts
     */
    public static int print(double value, int decimals, byte[] text) {
        // By hand, from the last digit on: each kit has hundreds, and builders and formats are
        // slow.
        long scaled = Math.round(Math.abs(value) * POWERS[decimals]);
        int start = MOST_SIGNS;
        long left = scaled;
        int places = decimals;
        while (places > 0 && left % 10 == 0) {
            left /= 10;
            places--;
        }
        if (places > 0) {
            for (; places > 0; places--) {
                text[--start] = (byte) ('0' + left % 10);
                left /= 10;
            }
            text[--start] = '.';
        }
        do {
            text[--start] = (byte) ('0' + left % 10);
            left /= 10;
        } while (left > 0);
        if (value < 0 && scaled != 0) {
            text[--start] = '-';
        }
        return start;
    }
}
