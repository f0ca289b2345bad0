package org.fusewright.core.quantity;

/** Electric potential difference in volts; finite and not negative. */
public record Volts(double value) implements Comparable<Volts> {

    public Volts {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(
                    "a voltage must be finite and not negative: " + value);
        }
    }

    @Override
    public int compareTo(Volts other) {
        return Double.compare(value, other.value);
    }
}
