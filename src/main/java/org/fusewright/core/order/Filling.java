package org.fusewright.core.order;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes real covers of chosen {@link Ways}: fills up what the orders lack by whole packs, and keeps
 * the cheapest cover.
 */
final class Filling {

    private static final int MOST_MIXED = 100;
    private static final int MOST_PASSES = 50;
    private static final int STEPS_FOR_FILLING = 2_000;

    private final Market market;
    private final boolean[] forced;
    private final Ways ways;
    private final Budget budget;
    private final int orders;
    private long least = Long.MAX_VALUE;
    private int @Nullable [] leastChosen;
    private int @Nullable [][] best;
    private long bestCost;

    /**
     * @param known the cost of a cover that there is; only cheaper ones are kept
     */
    Filling(Market market, boolean[] forced, Ways ways, long known, Budget budget) {
        this.market = market;
        this.forced = forced;
        this.ways = ways;
        this.budget = budget;
        this.orders = ways.orders();
        this.bestCost = known;
    }

    /** The cheapest cover; null when none was cheaper than the one known. */
    int @Nullable [][] best() {
        return best;
    }

    long bestCost() {
        return bestCost;
    }

    /** What to buy in the cheapest choice of ways, not filled up; null when there was none. */
    int @Nullable [][] start() {
        return leastChosen == null ? null : ways.quantities(leastChosen);
    }

    /**
     * Fills up the orders of chosen ways.
     *
     * @return whether no other filling of these ways can be cheaper than the best cover
     */
    boolean offer(int[] chosen) {
        long cost = ways.settledCost();
        for (int p = 0; p < chosen.length; p++) {
            cost += ways.cost(p, chosen[p]);
        }
        for (long lacks : lacksOf(chosen)) {
            cost += Math.max(0, lacks);
        }
        if (cost < least) {
            least = cost;
            leastChosen = chosen.clone();
        }
        if (cost >= bestCost) {
            return true;
        }
        int[][] quantities = ways.quantities(chosen);
        budget.spend(STEPS_FOR_FILLING);
        Padding.Outcome outcome = Padding.fill(market, quantities, forced);
        if (outcome != Padding.Outcome.FAILED) {
            long whole = Market.sum(market.valuesOf(quantities));
            if (whole < bestCost) {
                bestCost = whole;
                best = quantities;
            }
        }
        return outcome == Padding.Outcome.LEAST || cost >= bestCost;
    }

    private long[] lacksOf(int[] chosen) {
        long[] lacks = new long[orders];
        for (int m = 0; m < orders; m++) {
            lacks[m] = ways.minimum(m);
            for (int p = 0; p < chosen.length; p++) {
                lacks[m] -= ways.value(p, chosen[p], m);
            }
        }
        return lacks;
    }

    /**
     * Where mixed covers differ in few parts, tries what they say of these in all ways; else makes
     * each cheaper part by part.
     */
    void offerMixed(List<int[]> columns, int[][] left) {
        int parts = ways.parts();
        List<Integer> differing = new ArrayList<>();
        List<int[]> choices = new ArrayList<>();
        long count = 1;
        for (int p = 0; p < parts; p++) {
            int part = p;
            int[] distinct = columns.stream().mapToInt(c -> c[part]).distinct().toArray();
            if (distinct.length > 1) {
                differing.add(p);
                choices.add(distinct);
                count = Math.min(2L * MOST_MIXED, count * distinct.length);
            }
        }
        if (count > MOST_MIXED) {
            columns.forEach(column -> offer(descended(column, left)));
            return;
        }
        int[] chosen = columns.getFirst().clone();
        for (long n = 0; n < count; n++) {
            long code = n;
            for (int d = 0; d < differing.size(); d++) {
                int[] of = choices.get(d);
                chosen[differing.get(d)] = of[(int) (code % of.length)];
                code /= of.length;
            }
            offer(chosen);
        }
    }

    /** Changes one part at a time for as long as that makes the whole cheaper, with what lacks. */
    private int[] descended(int[] start, int[][] left) {
        int[] chosen = start.clone();
        long[] lacks = lacksOf(chosen);
        boolean improved = true;
        for (int pass = 0; improved && pass < MOST_PASSES; pass++) {
            improved = false;
            for (int p = 0; p < chosen.length; p++) {
                int way = cheapestBeside(p, chosen[p], left[p], lacks);
                if (way != chosen[p]) {
                    for (int m = 0; m < orders; m++) {
                        lacks[m] += ways.value(p, chosen[p], m) - ways.value(p, way, m);
                    }
                    chosen[p] = way;
                    improved = true;
                }
            }
        }
        return chosen;
    }

    private int cheapestBeside(int part, int now, int @Nullable [] left, long[] lacks) {
        int count = left == null ? ways.countKnown(part) : left.length;
        budget.spend(count);
        int cheapest = now;
        long leastCost = costBeside(part, now, now, lacks);
        for (int i = 0; i < count; i++) {
            int way = left == null ? i : left[i];
            long cost = costBeside(part, now, way, lacks);
            if (cost < leastCost) {
                leastCost = cost;
                cheapest = way;
            }
        }
        return cheapest;
    }

    private long costBeside(int part, int now, int way, long[] lacks) {
        long cost = ways.cost(part, way);
        for (int m = 0; m < orders; m++) {
            cost += Math.max(0, lacks[m] + ways.value(part, now, m) - ways.value(part, way, m));
        }
        return cost;
    }
}
