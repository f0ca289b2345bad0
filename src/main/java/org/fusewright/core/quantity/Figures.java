package org.fusewright.core.quantity;

/** Prints figures for sentences: rounded half up, no trailing zeros, a point for the decimals. */
public final class Figures {

    private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    private Figures() {}

    /** At most two decimals: "7.5", "0.42", "12". */
    public static String of(double value) {
        return of(value, 2);
    }

    /**
     * @param decimals most decimals to show, 0 to 6
     */
    public static String of(double value, int decimals) {
        if (Double.isNaN(value) || Math.abs(value) > 1e12) {
            return Double.toString(value);
        }
        // By hand: sentences are made in hundreds for each kit, and format strings are slow.
        long scaled = Math.round(Math.abs(value) * POWERS[decimals]);
        long whole = scaled / POWERS[decimals];
        long part = scaled % POWERS[decimals];
        StringBuilder text = new StringBuilder(16);
        if (value < 0 && scaled != 0) {
            text.append('-');
        }
        text.append(whole);
        if (part != 0) {
            String digits = Long.toString(part);
            text.append('.').append("0".repeat(decimals - digits.length())).append(digits);
            while (text.charAt(text.length() - 1) == '0') {
                text.setLength(text.length() - 1);
            }
        }
        return text.toString();
    }
}
