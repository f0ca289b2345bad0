package org.fusewright.core.quantity;

/** Electric resistance in ohms; finite and not negative. */
public record Ohms(double value) implements Comparable<Ohms> {

    public Ohms {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(
                    "a resistance must be finite and not negative: " + value);
        }
    }

    @Override
    public int compareTo(Ohms other) {
        return Double.compare(value, other.value);
    }
}
