package org.fusewright.core.quantity;

/** Electric current in amperes; finite and not negative. */
public record Amperes(double value) implements Comparable<Amperes> {

    public Amperes {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(
                    "a current must be finite and not negative: " + value);
        }
    }

    @Override
    public int compareTo(Amperes other) {
        return Double.compare(value, other.value);
    }
}
