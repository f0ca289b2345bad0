package org.fusewright.core.sizing;

import org.fusewright.core.quantity.Figures;

/** Quantities with their units, as sentences show them. */
final class Say {

    private Say() {}

    static String amps(double currentA) {
        return Figures.of(currentA, Math.abs(currentA) < 10 ? 2 : 1) + " A";
    }

    static String rating(double ratingA) {
        return Figures.of(ratingA) + " A";
    }

    static String volts(double potentialV) {
        return Figures.of(potentialV) + " V";
    }

    static String percent(double value) {
        return Figures.of(value, 1) + " %";
    }

    static String area(double areaMm2) {
        return Figures.of(areaMm2) + " mm2";
    }

    static String metres(double lengthM) {
        return Figures.of(lengthM) + " m";
    }

    /** A time in the unit that keeps it readable. */
    static String seconds(double timeS) {
        if (timeS < 1) {
            return Figures.of(timeS * 1000, timeS < 0.01 ? 1 : 0) + " ms";
        }
        return timeS >= 3600 ? Figures.of(timeS / 3600, 1) + " h" : Figures.of(timeS, 1) + " s";
    }
}
