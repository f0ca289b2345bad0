package org.fusewright.core.quantity;

/**
 * A length to cut, in whole millimetres; not negative. Whole numbers so that a cut list adds up.
 */
public record Millimetres(long value) implements Comparable<Millimetres> {

    public Millimetres {
        if (value < 0) {
            throw new IllegalArgumentException("a length must not be negative: " + value);
        }
    }

    public Millimetres plus(Millimetres other) {
        return new Millimetres(value + other.value);
    }

    public double metres() {
        return value / 1000.0;
    }

    @Override
    public int compareTo(Millimetres other) {
        return Long.compare(value, other.value);
    }
}
