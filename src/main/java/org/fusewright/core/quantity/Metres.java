package org.fusewright.core.quantity;

/** Length along a route in metres; finite and not negative. */
public record Metres(double value) implements Comparable<Metres> {

    public Metres {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(
                    "a length must be finite and not negative: " + value);
        }
    }

    @Override
    public int compareTo(Metres other) {
        return Double.compare(value, other.value);
    }
}
