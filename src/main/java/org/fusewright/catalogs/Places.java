package org.fusewright.catalogs;

import java.util.Arrays;
import java.util.List;

/**
 * A rising set of places in a list: their numbers while they are few, a bit for each place of the
 * list once that is smaller.
 */
final class Places {

    private static final int BITS = 64;

    private final int size;
    private int[] few = new int[2];
    private long[] bits = {};
    private int count;
    private int last = -1;

    /**
     * @param size of the list
     */
    Places(int size) {
        this.size = size;
    }

    /** Adds a place that is not below the last one. */
    void add(int place) {
        if (place == last) {
            return;
        }
        last = place;
        if (bits.length == 0 && count >= size / Integer.SIZE) {
            bits = new long[size / BITS + 1];
            for (int i = 0; i < count; i++) {
                set(few[i]);
            }
            few = new int[0];
        }
        if (bits.length > 0) {
            set(place);
        } else {
            if (count == few.length) {
                few = Arrays.copyOf(few, count + (count >> 1) + 1);
            }
            few[count] = place;
        }
        count++;
    }

    private void set(int place) {
        bits[place / BITS] |= 1L << (place % BITS);
    }

    /** Gives back what was kept to grow. */
    void trim() {
        if (bits.length == 0) {
            few = Arrays.copyOf(few, count);
        }
    }

    int count() {
        return count;
    }

    /**
     * The first place from {@code from} on that is in all of the sets; {@code size} when there is
     * none.
     *
     * @param sets the smallest first; none of them: every place is in
     */
    static int nextOfAll(List<Places> sets, int from, int size) {
        if (sets.isEmpty()) {
            return from;
        }
        Places smallest = sets.getFirst();
        return smallest.bits.length == 0
                ? nextOfFew(smallest, sets, from, size)
                : nextOfMany(sets, from, size);
    }

    private static int nextOfFew(Places smallest, List<Places> sets, int from, int size) {
        int at = Arrays.binarySearch(smallest.few, 0, smallest.count, from);
        for (int i = at < 0 ? -at - 1 : at; i < smallest.count; i++) {
            if (areAllHolding(sets, smallest.few[i])) {
                return smallest.few[i];
            }
        }
        return size;
    }

    private static boolean areAllHolding(List<Places> sets, int place) {
        for (int i = 1; i < sets.size(); i++) {
            if (!sets.get(i).holds(place)) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(int place) {
        return bits.length == 0
                ? Arrays.binarySearch(few, 0, count, place) >= 0
                : (bits[place / BITS] >>> (place % BITS) & 1) == 1;
    }

    /** Sets that are no smaller than one of bits are sets of bits. */
    private static int nextOfMany(List<Places> sets, int from, int size) {
        long mask = -1L << (from % BITS);
        for (int block = from / BITS; block <= size / BITS; block++) {
            long all = mask;
            for (int i = 0; i < sets.size() && all != 0; i++) {
                all &= sets.get(i).bits[block];
            }
            if (all != 0) {
                return block * BITS + Long.numberOfTrailingZeros(all);
            }
            mask = -1L;
        }
        return size;
    }
}
