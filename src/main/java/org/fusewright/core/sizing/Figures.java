package org.fusewright.core.sizing;

/** Numbers as sentences show them: rounded half up, no trailing zeros, a point for decimals. */
final class Figures {

    private static final long[] SCALE = {1, 10, 100, 1_000, 10_000};

    private Figures() {}

    static String amps(double currentA) {
        return number(currentA, currentA < 10 ? 2 : 1) + " A";
    }

    static String rating(double ratingA) {
        return number(ratingA, 2) + " A";
    }

    static String volts(double potentialV) {
        return number(potentialV, 2) + " V";
    }

    static String percent(double value) {
        return number(value, 1) + " %";
    }

    static String area(double areaMm2) {
        return number(areaMm2, 2) + " mm2";
    }

    static String metres(double lengthM) {
        return number(lengthM, 2) + " m";
    }

    /** A time in the unit that keeps it readable. */
    static String seconds(double timeS) {
        if (timeS < 1) {
            return number(timeS * 1000, timeS < 0.01 ? 1 : 0) + " ms";
        }
        return timeS >= 3600 ? number(timeS / 3600, 1) + " h" : number(timeS, 1) + " s";
    }

    static String number(double value, int decimals) {
        if (Math.abs(value) > 1e12) {
            return Double.toString(value);
        }
        long scaled = Math.round(Math.abs(value) * SCALE[decimals]);
        int left = decimals;
        while (left > 0 && scaled % 10 == 0) {
            scaled /= 10;
            left--;
        }
        StringBuilder text = new StringBuilder(16);
        if (value < 0 && scaled != 0) {
            text.append('-');
        }
        text.append(scaled / SCALE[left]);
        if (left > 0) {
            String fraction = Long.toString(scaled % SCALE[left]);
            text.append('.').repeat("0", left - fraction.length()).append(fraction);
        }
        return text.toString();
    }
}
