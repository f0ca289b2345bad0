package org.fusewright.core.fitting;

import java.util.Arrays;

/**
 * The least price of blocks that bring so many positions and so many relay pairs, using only the
 * forms from a given one on: an unbounded covering knapsack, exact in whole numbers. Above a size
 * it leaves the relay pairs out, which keeps it a lower bound.
 */
final class Covers {

    static final long IMPOSSIBLE = Long.MAX_VALUE / 4;

    private static final long MOST_ENTRIES = 4_000_000;

    private final int columns;
    private final long[][] least;

    /** Forms of named blocks count like others, which keeps it a lower bound. */
    Covers(FormTable table, long[] price, int positions, int pairs) {
        int forms = table.size();
        boolean small = (positions + 1L) * (pairs + 1L) * (forms + 1L) <= MOST_ENTRIES;
        columns = small ? pairs + 1 : 1;
        least = new long[forms + 1][(positions + 1) * columns];
        Arrays.fill(least[forms], IMPOSSIBLE);
        least[forms][0] = 0;
        for (int f = forms - 1; f >= 0; f--) {
            long[] without = least[f + 1];
            long[] with = least[f];
            for (int w = 0; w <= positions; w++) {
                int restW = Math.max(0, w - table.positions[f]) * columns;
                for (int r = 0; r < columns; r++) {
                    int at = w * columns + r;
                    int rest = restW + Math.max(0, r - table.pairs[f]);
                    long best = without[at];
                    if (rest != at && with[rest] < IMPOSSIBLE) {
                        best = Math.min(best, price[f] + with[rest]);
                    }
                    with[at] = best;
                }
            }
        }
    }

    long least(int from, int positions, int pairs) {
        return least[from][Math.max(0, positions) * columns + Math.clamp(pairs, 0, columns - 1)];
    }
}
