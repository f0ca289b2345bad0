package org.fusewright.core.fitting;

/** Guards for the figures of a fitting task. */
final class Require {

    private Require() {}

    static void text(String field, String value) {
        if (value.isBlank()) {
            throw new IllegalArgumentException(field + " must not be empty");
        }
    }

    static void range(String field, double value, double from, double to) {
        if (!(value >= from && value <= to)) {
            throw new IllegalArgumentException(
                    field + " must be " + from + " to " + to + ", not " + value);
        }
    }

    static void range(String field, long value, long from, long to) {
        if (value < from || value > to) {
            throw new IllegalArgumentException(
                    field + " must be " + from + " to " + to + ", not " + value);
        }
    }
}
