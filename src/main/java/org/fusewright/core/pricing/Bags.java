package org.fusewright.core.pricing;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.PartNumber;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The stocked bagged sets, with prices in whole millionths. A need tells how many pieces are asked
 * for of each part that some bag holds, by the place of the part among these.
 */
public final class Bags {

    private final List<BaggedSet> sets;
    private final List<PartNumber> parts;
    private final Map<PartNumber, Integer> places = new HashMap<>();
    private final long[] pieceMicros;
    private final long[] bagMicros;
    private final int[][] contents;

    private Bags(List<BaggedSet> stocked, PriceList prices) {
        sets = stocked;
        TreeSet<PartNumber> held = new TreeSet<>();
        for (BaggedSet set : sets) {
            set.contains().forEach(content -> held.add(content.part()));
        }
        parts = List.copyOf(held);
        pieceMicros = new long[parts.size()];
        for (int p = 0; p < pieceMicros.length; p++) {
            places.put(parts.get(p), p);
            pieceMicros[p] = prices.unitPriceMicros(parts.get(p));
        }
        bagMicros = new long[sets.size()];
        contents = new int[bagMicros.length][pieceMicros.length];
        for (int s = 0; s < bagMicros.length; s++) {
            bagMicros[s] = prices.unitPriceMicros(sets.get(s).number());
            for (BaggedSet.Content content : sets.get(s).contains()) {
                contents[s][places.get(content.part())] = content.quantity();
            }
        }
    }

    static Bags of(List<BaggedSet> stocked, PriceList prices) {
        return new Bags(stocked, prices);
    }

    /** The bagged sets, by number. */
    public List<BaggedSet> sets() {
        return sets;
    }

    /** The parts that some bag holds, by number. */
    public List<PartNumber> parts() {
        return parts;
    }

    /** The place of a part among those that some bag holds; -1 when none does. */
    public int placeOf(PartNumber part) {
        return places.getOrDefault(part, -1);
    }

    public long pieceMicros(int part) {
        return pieceMicros[part];
    }

    public long bagMicros(int set) {
        return bagMicros[set];
    }

    /** Pieces of a part in one bag. */
    public int content(int set, int part) {
        return contents[set][part];
    }

    /** How many bags of each set cover the need at least cost, with loose pieces for the rest. */
    public int[] cheapest(int[] need) {
        return new Search(need).best;
    }

    /** How much less the need costs so than by the piece. */
    public long savedMicros(int[] need) {
        Search search = new Search(need);
        return search.worth(need) - search.bestMicros;
    }

    /**
     * Every number of each set is tried for as long as one more bag could still pay. Among equal
     * costs fewer bags win.
     */
    private final class Search {

        /** The sets that could pay: those that do not cost more than what is needed of them. */
        private final int[] tried;

        private final int[] count = new int[bagMicros.length];
        private int[] best = count.clone();
        private long bestMicros = Long.MAX_VALUE;

        Search(int[] need) {
            int[] paying = new int[bagMicros.length];
            int next = 0;
            for (int s = 0; s < paying.length; s++) {
                if (worthOfOneMore(s, need) > bagMicros[s]) {
                    paying[next++] = s;
                }
            }
            tried = Arrays.copyOf(paying, next);
            tryFrom(0, need, 0);
        }

        private void tryFrom(int at, int[] open, long spentMicros) {
            if (spentMicros >= bestMicros) {
                return;
            }
            if (at == tried.length) {
                long micros = spentMicros + worth(open);
                if (micros < bestMicros) {
                    bestMicros = micros;
                    best = count.clone();
                }
                return;
            }
            int set = tried[at];
            int[] left = open;
            long spent = spentMicros;
            tryFrom(at + 1, left, spent);
            // Other bags only lower the need, so once one more does not pay here it never will.
            while (worthOfOneMore(set, left) > bagMicros[set]) {
                count[set]++;
                spent += bagMicros[set];
                left = without(set, left);
                tryFrom(at + 1, left, spent);
            }
            count[set] = 0;
        }

        private int[] without(int set, int[] open) {
            int[] left = open.clone();
            for (int p = 0; p < left.length; p++) {
                left[p] = Math.max(0, left[p] - contents[set][p]);
            }
            return left;
        }

        private long worth(int[] open) {
            long micros = 0;
            for (int p = 0; p < open.length; p++) {
                micros += open[p] * pieceMicros[p];
            }
            return micros;
        }

        private long worthOfOneMore(int set, int[] open) {
            long micros = 0;
            for (int p = 0; p < open.length; p++) {
                micros += Math.min(open[p], contents[set][p]) * pieceMicros[p];
            }
            return micros;
        }
    }
}
