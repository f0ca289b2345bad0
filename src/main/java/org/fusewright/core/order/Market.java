package org.fusewright.core.order;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The needed parts with their offers, and the suppliers.
 *
 * @param suppliers by code; offers name them by their place here
 * @param minimums what an order at each must be worth, in minor units; 0 where anything goes
 */
record Market(List<PartSupply> parts, List<String> suppliers, long[] minimums) {

    /** What a set of quantities costs at each supplier. */
    long[] valuesOf(int[][] quantities) {
        long[] values = new long[suppliers.size()];
        for (int p = 0; p < quantities.length; p++) {
            parts.get(p).addValues(quantities[p], values);
        }
        return values;
    }

    /** Which suppliers something is bought of, even if it costs nothing. */
    boolean[] usedBy(int[][] quantities) {
        boolean[] used = new boolean[suppliers.size()];
        for (int p = 0; p < quantities.length; p++) {
            for (int i = 0; i < quantities[p].length; i++) {
                if (quantities[p][i] > 0) {
                    used[parts.get(p).offers().get(i).supplier()] = true;
                }
            }
        }
        return used;
    }

    /**
     * The same with minimums that whole packs can reach.
     *
     * @param out suppliers of whom nothing is bought
     * @param forced the suppliers that are ordered from; the other minimums stay
     */
    Market withReachableMinimums(boolean[] out, boolean[] forced) {
        long[] reachable = minimums.clone();
        for (int s = 0; s < reachable.length; s++) {
            if (forced[s]) {
                reachable[s] = Padding.leastReachable(this, s, out);
            }
        }
        return new Market(parts, suppliers, reachable);
    }

    /** The suppliers that must be ordered from and ask for a minimum. */
    int[] forcedMinimums(boolean[] forced) {
        return IntStream.range(0, forced.length)
                .filter(s -> forced[s] && minimums[s] > 0)
                .toArray();
    }

    static long sum(long[] values) {
        long sum = 0;
        for (long value : values) {
            sum += value;
        }
        return sum;
    }
}
