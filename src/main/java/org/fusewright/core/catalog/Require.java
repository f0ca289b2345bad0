package org.fusewright.core.catalog;

import org.fusewright.core.words.Phrase;

/** Guards for the figures of a part. */
final class Require {

    private Require() {}

    /** Says in English what is refused; readers of other languages recall it. */
    static IllegalArgumentException refused(String key, Object... values) {
        return new IllegalArgumentException(Phrase.of(key, values).english());
    }

    static void positive(String field, double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(field + " must be greater than 0, not " + value);
        }
    }

    static void notNegative(String field, double value) {
        if (!(value >= 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(field + " must not be negative: " + value);
        }
    }

    static void range(String what, double from, double to) {
        positive(what + " from", from);
        if (!(to >= from) || !Double.isFinite(to)) {
            throw new IllegalArgumentException(
                    what + " must run from low to high: " + from + " to " + to);
        }
    }
}
