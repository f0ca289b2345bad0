package org.fusewright.core.pricing;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.PartNumber;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Covers a need of parts by bagged sets and loose pieces at least cost. Exact: every number of each
 * set is tried for as long as one more bag could still pay. Among equal costs fewer bags win.
 */
public final class Covering {

    /**
     * @param bags sets to take, and how many of each
     * @param loose pieces to add singly, by part; none of them is left over in a bag
     */
    public record Cover(
            SortedMap<PartNumber, Integer> bags, SortedMap<PartNumber, Integer> loose) {}

    private final List<PartNumber> parts;
    private final long[] priceMicros;
    private final List<BaggedSet> sets = new ArrayList<>();
    private final long[] setMicros;
    private final int[][] contents;

    private final int[] count;
    private int[] bestCount;
    private long bestMicros;

    private Covering(SortedMap<PartNumber, Integer> need, Stock stock) {
        this.parts = List.copyOf(need.keySet());
        this.priceMicros = new long[parts.size()];
        for (int p = 0; p < priceMicros.length; p++) {
            priceMicros[p] = stock.prices().unitPriceMicros(parts.get(p));
        }
        for (BaggedSet set : stock.list(BaggedSet.class)) {
            if (canPay(set, need, stock.prices())) {
                sets.add(set);
            }
        }
        this.setMicros = new long[sets.size()];
        this.contents = new int[sets.size()][parts.size()];
        for (int s = 0; s < sets.size(); s++) {
            setMicros[s] = stock.prices().unitPriceMicros(sets.get(s).number());
            for (BaggedSet.Content content : sets.get(s).contains()) {
                int at = Collections.binarySearch(parts, content.part());
                if (at >= 0) {
                    contents[s][at] = content.quantity();
                }
            }
        }
        this.count = new int[sets.size()];
        this.bestCount = count.clone();
        this.bestMicros = Long.MAX_VALUE;
    }

    /**
     * @param need pieces of each part; parts that no bag holds come back as loose
     */
    public static Cover cover(SortedMap<PartNumber, Integer> need, Stock stock) {
        Covering covering = new Covering(need, stock);
        int[] open = new int[covering.parts.size()];
        int next = 0;
        for (int pieces : need.values()) {
            open[next++] = pieces;
        }
        covering.tryFrom(0, open, 0);
        return covering.best(need);
    }

    /** A bag that costs more than all of its pieces that could be needed never pays. */
    private static boolean canPay(BaggedSet set, Map<PartNumber, Integer> need, PriceList prices) {
        long worthMicros = 0;
        for (BaggedSet.Content content : set.contains()) {
            int useful = Math.min(content.quantity(), need.getOrDefault(content.part(), 0));
            worthMicros += useful * prices.unitPriceMicros(content.part());
        }
        return prices.unitPriceMicros(set.number()) < worthMicros;
    }

    private void tryFrom(int set, int[] open, long spentMicros) {
        if (spentMicros >= bestMicros) {
            return;
        }
        if (set == sets.size()) {
            long micros = spentMicros + worth(open);
            if (micros < bestMicros) {
                bestMicros = micros;
                bestCount = count.clone();
            }
            return;
        }
        int[] left = open.clone();
        long spent = spentMicros;
        count[set] = 0;
        tryFrom(set + 1, left, spent);
        // Other bags only lower the need, so once one more bag does not pay here it never will.
        while (worthOfOneMore(set, left) > setMicros[set]) {
            count[set]++;
            spent += setMicros[set];
            for (int p = 0; p < left.length; p++) {
                left[p] = Math.max(0, left[p] - contents[set][p]);
            }
            tryFrom(set + 1, left, spent);
        }
        count[set] = 0;
    }

    private long worth(int[] open) {
        long micros = 0;
        for (int p = 0; p < open.length; p++) {
            micros += open[p] * priceMicros[p];
        }
        return micros;
    }

    private long worthOfOneMore(int set, int[] open) {
        long micros = 0;
        for (int p = 0; p < open.length; p++) {
            micros += Math.min(open[p], contents[set][p]) * priceMicros[p];
        }
        return micros;
    }

    private Cover best(SortedMap<PartNumber, Integer> need) {
        SortedMap<PartNumber, Integer> bags = new TreeMap<>();
        SortedMap<PartNumber, Integer> loose = new TreeMap<>(need);
        for (int s = 0; s < sets.size(); s++) {
            if (bestCount[s] == 0) {
                continue;
            }
            bags.put(sets.get(s).number(), bestCount[s]);
            for (BaggedSet.Content content : sets.get(s).contains()) {
                int brought = bestCount[s] * content.quantity();
                loose.computeIfPresent(
                        content.part(), (part, open) -> open > brought ? open - brought : null);
            }
        }
        return new Cover(bags, loose);
    }
}
