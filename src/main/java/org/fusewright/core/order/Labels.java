package org.fusewright.core.order;

import java.util.Arrays;

/**
 * Partial answers of a {@link LabelSearch} after so many parts: what each costs, what its orders
 * reach, and how it came about. When merging, of those that reach the same only the cheapest is
 * kept.
 */
final class Labels {

    private static final int FIRST_SIZE = 64;

    private final int width;
    private final boolean merging;
    private int count;
    private double lostBound = Double.POSITIVE_INFINITY;
    private long[] costs = new long[FIRST_SIZE];
    private long[] values;
    private double[] bounds = new double[FIRST_SIZE];
    private int[] before = new int[FIRST_SIZE];
    private int[] options = new int[FIRST_SIZE];
    private int[] index = new int[4 * FIRST_SIZE];

    /**
     * @param width how many orders are counted
     */
    Labels(int width, boolean merging) {
        this.width = width;
        this.merging = merging;
        this.values = new long[FIRST_SIZE * width];
        Arrays.fill(index, -1);
    }

    int count() {
        return count;
    }

    long cost(int label) {
        return costs[label];
    }

    /** Nothing that comes of the label costs less. */
    double bound(int label) {
        return bounds[label];
    }

    long value(int label, int order) {
        return values[label * width + order];
    }

    /** The label that it was made of. */
    int before(int label) {
        return before[label];
    }

    /** The choice that was added. */
    int option(int label) {
        return options[label];
    }

    /** The least bound of a label that gave way to a cheaper one; infinite when none did. */
    double lostBound() {
        return lostBound;
    }

    /** When merging, keeps a label unless one that reaches the same is as cheap. */
    void add(long cost, long[] reached, double bound, int from, int option) {
        if (count == costs.length) {
            grow();
        }
        if (merging) {
            int slot = slotOf(reached);
            int at = index[slot];
            if (at >= 0) {
                lostBound = Math.min(lostBound, Math.max(bound, bounds[at]));
                if (cost < costs[at]) {
                    set(at, cost, bound, from, option);
                }
                return;
            }
            index[slot] = count;
        }
        System.arraycopy(reached, 0, values, count * width, width);
        set(count++, cost, bound, from, option);
    }

    private void set(int at, long cost, double bound, int from, int option) {
        costs[at] = cost;
        bounds[at] = bound;
        before[at] = from;
        options[at] = option;
    }

    private int slotOf(long[] reached) {
        int mask = index.length - 1;
        int slot = hash(reached, 0) & mask;
        while (index[slot] >= 0 && !isAt(index[slot], reached)) {
            slot = (slot + 1) & mask;
        }
        return slot;
    }

    private int hash(long[] of, int from) {
        long hash = 0;
        for (int m = 0; m < width; m++) {
            hash = (hash ^ of[from + m]) * 0x9E3779B97F4A7C15L;
            hash ^= hash >>> 29;
        }
        return (int) (hash ^ hash >>> 32);
    }

    private boolean isAt(int label, long[] reached) {
        for (int m = 0; m < width; m++) {
            if (values[label * width + m] != reached[m]) {
                return false;
            }
        }
        return true;
    }

    private void grow() {
        int size = 2 * costs.length;
        costs = Arrays.copyOf(costs, size);
        values = Arrays.copyOf(values, size * width);
        bounds = Arrays.copyOf(bounds, size);
        before = Arrays.copyOf(before, size);
        options = Arrays.copyOf(options, size);
        if (merging) {
            indexAnew(size);
        }
    }

    private void indexAnew(int size) {
        index = new int[4 * size];
        Arrays.fill(index, -1);
        for (int label = 0; label < count; label++) {
            int slot = hash(values, label * width) & (index.length - 1);
            while (index[slot] >= 0) {
                slot = (slot + 1) & (index.length - 1);
            }
            index[slot] = label;
        }
    }

    /** The ones with the least bounds, at most so many; of equal bounds the first. */
    Labels narrowed(int most) {
        if (count <= most) {
            return this;
        }
        double[] sorted = Arrays.copyOf(bounds, count);
        Arrays.sort(sorted);
        double last = sorted[most - 1];
        int equal = 0;
        for (int i = most - 1; i >= 0 && sorted[i] == last; i--) {
            equal++;
        }
        Labels kept = new Labels(width, merging);
        long[] reached = new long[width];
        for (int label = 0; label < count; label++) {
            if (bounds[label] < last || (bounds[label] == last && equal-- > 0)) {
                System.arraycopy(values, label * width, reached, 0, width);
                kept.add(costs[label], reached, bounds[label], before[label], options[label]);
            }
        }
        return kept;
    }
}
