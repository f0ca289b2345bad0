package org.fusewright.core.words;

/**
 * A figure with its unit, to be said.
 *
 * @param decimals most decimals to show, 0 to 4, in the figure's own unit
 */
public record Amount(double value, Unit unit, int decimals) implements Text {

    /** A current: two decimals below 10 A, else one. */
    public static Amount amps(double currentA) {
        return new Amount(currentA, Unit.AMPERE, Math.abs(currentA) < 10 ? 2 : 1);
    }

    /** The rating of a device or contact. */
    public static Amount rating(double ratingA) {
        return new Amount(ratingA, Unit.AMPERE, 2);
    }

    public static Amount volts(double potentialV) {
        return new Amount(potentialV, Unit.VOLT, 2);
    }

    public static Amount percent(double percent) {
        return new Amount(percent, Unit.PERCENT, 1);
    }

    public static Amount area(double areaMm2) {
        return new Amount(areaMm2, Unit.SQUARE_MILLIMETRE, 2);
    }

    public static Amount metres(double lengthM) {
        return new Amount(lengthM, Unit.METRE, 2);
    }

    /** A time, said in the unit that keeps it readable: ms, s or h. */
    public static Amount seconds(double timeS) {
        return new Amount(timeS, Unit.SECOND, 1);
    }

    /** A temperature to the whole degree. */
    public static Amount celsius(double temperatureC) {
        return new Amount(temperatureC, Unit.CELSIUS, 0);
    }

    /** The figure alone, where its unit stands behind another one: the lower end of a range. */
    public Text bare() {
        return new Bare(this);
    }
}
