package org.fusewright.core.quantity;

/** Temperature in degrees Celsius; finite and not below absolute zero. */
public record Celsius(double value) implements Comparable<Celsius> {

    public Celsius {
        if (!Double.isFinite(value) || value < -273.15) {
            throw new IllegalArgumentException(
                    "a temperature must be finite and above absolute zero: " + value);
        }
    }

    @Override
    public int compareTo(Celsius other) {
        return Double.compare(value, other.value);
    }
}
