package org.fusewright.core.catalog;

import org.jspecify.annotations.Nullable;

import java.util.regex.Pattern;

/** The number by which a part is ordered; 1 to 40 letters, digits, dots, dashes or slashes. */
public record PartNumber(String value) implements Comparable<PartNumber> {

    private static final Pattern FORM = Pattern.compile("[A-Za-z0-9][A-Za-z0-9./-]{0,39}");

    public PartNumber {
        if (!isOne(value)) {
            throw new IllegalArgumentException("not a part number: " + value);
        }
    }

    /** Whether a text has the form of a part number. */
    public static boolean isOne(String text) {
        return FORM.matcher(text).matches();
    }

    @Override
    public int compareTo(PartNumber other) {
        return value.compareTo(other.value);
    }

    // Maps ask for these thousands of times for one kit; the text remembers its hash.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof PartNumber number && value.equals(number.value);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    @Override
    public String toString() {
        return value;
    }
}
