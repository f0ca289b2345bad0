package org.fusewright.core.quantity;

/** Prints decimal numbers by hand: each kit has over a thousand, and general formats are slow. */
public final class Digits {

    /** Enough for any number and its point. */
    public static final int MOST_SIGNS = 20;

    private Digits() {}

    /**
     * Prints so many parts of a whole in ASCII, without idle zeros behind the point: 1250
     * hundredths are "12.5".
     *
     * @param parts not negative
     * @param decimals how many decimals such a part has: 2 for hundredths
     * @param at where the number starts; {@link #MOST_SIGNS} must be free there
     * @return where it ends
     */
    public static int print(long parts, int decimals, byte[] text, int at) {
        long left = parts;
        int places = decimals;
        while (places > 0 && left % 10 == 0) {
            left /= 10;
            places--;
        }
        int digits = Math.max(count(left), places + 1);
        int end = at + digits + (places > 0 ? 1 : 0);
        int next = end;
        for (; places > 0; places--) {
            text[--next] = (byte) ('0' + left % 10);
            left /= 10;
            if (places == 1) {
                text[--next] = '.';
            }
        }
        // Shorter steps for short numbers, which nearly all are.
        while (left > Integer.MAX_VALUE) {
            text[--next] = (byte) ('0' + left % 10);
            left /= 10;
        }
        int rest = (int) left;
        while (next > at) {
            text[--next] = (byte) ('0' + rest % 10);
            rest /= 10;
        }
        return end;
    }

    private static int count(long number) {
        int digits = 1;
        for (long next = 10; next <= number && digits < MOST_SIGNS - 2; next *= 10) {
            digits++;
        }
        return digits;
    }
}
