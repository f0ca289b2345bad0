package org.fusewright.jobs.load;

/**
 * The numbers that a field allows.
 *
 * @param above whether {@code min} itself is left out
 * @param unit the unit in words, empty for a plain number
 */
public record Range(double min, boolean above, double max, String unit, boolean whole) {
    public static Range above(double min, double max, String unit) {
        return new Range(min, true, max, unit, false);
    }

    public static Range from(double min, double max, String unit) {
        return new Range(min, false, max, unit, false);
    }

    public static Range whole(int min, int max, String unit) {
        return new Range(min, false, max, unit, true);
    }

    boolean allows(double value) {
        return (above ? value > min : value >= min)
                && value <= max
                && (!whole || value == Math.rint(value));
    }

    /** A number inside, to carry on with when none was given. */
    double placeholder() {
        return Math.min(Math.max(min, 1), max);
    }

    String words() {
        return "a "
                + (whole ? "whole " : "")
                + "number "
                + (above ? "above " + plain(min) + " and at most " + ending() : "from " + span());
    }

    /** Such as "1 to 3 leads". */
    String span() {
        return plain(min) + " to " + ending();
    }

    private String ending() {
        return plain(max) + (unit.isEmpty() ? "" : " " + unit);
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
