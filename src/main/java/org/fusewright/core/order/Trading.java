package org.fusewright.core.order;

import org.jspecify.annotations.Nullable;

import java.util.SplittableRandom;

/**
 * Looks for a cheaper cover near a known choice: takes some of one offer away, buys it of another
 * one, and keeps that when the whole, with what orders lack, costs no more or not much more (that
 * threshold falls to nothing). Orders are filled up where the whole promises to be cheaper. Drawn
 * by chance, but always the same.
 */
final class Trading {

    private static final int MOST_DRAWS = 100_000;
    private static final int MOST_PADDED = 400;
    private static final int STEPS_FOR_PADDING = 2_000;
    private static final double FIRST_THRESHOLD = 0.003;

    private final Market market;
    private final boolean[] forced;
    private final Budget budget;

    /** Always of the same seed, so that the same task gives the same answer. */
    private final SplittableRandom random = new SplittableRandom(1);

    private final double floor;
    private final int[][] now;
    private final long[] values;
    private int @Nullable [][] best;
    private long bestCost;

    private Trading(
            Market market,
            boolean[] forced,
            int[][] start,
            double floor,
            long known,
            Budget budget) {
        this.market = market;
        this.forced = forced;
        this.now = start;
        this.values = market.valuesOf(start);
        this.floor = floor;
        this.bestCost = known;
        this.budget = budget;
    }

    /**
     * @param start what to buy of the suppliers that are ordered from; is changed
     * @param floor nothing costs less
     * @param known the cost of a cover that there is
     * @return a cheaper cover; null when none was found
     */
    static int @Nullable [][] trade(
            Market market,
            boolean[] forced,
            int[][] start,
            double floor,
            long known,
            Budget budget) {
        Trading trading = new Trading(market, forced, start, floor, known, budget);
        trading.trade();
        return trading.best;
    }

    private void trade() {
        long cost = costWithLacks();
        double threshold = FIRST_THRESHOLD * cost / now.length;
        int padded = 0;
        budget.spend(MOST_DRAWS / 4);
        for (int draw = 0; draw < MOST_DRAWS && bestCost > floor; draw++) {
            int part = random.nextInt(now.length);
            int[] before = now[part];
            int[] after = drawn(market.parts().get(part), before);
            if (after == null) {
                continue;
            }
            swap(part, after);
            long next = costWithLacks();
            if (next > cost + threshold * (MOST_DRAWS - 2.0 * draw) / MOST_DRAWS && next > cost) {
                swap(part, before);
                continue;
            }
            cost = next;
            if (cost < bestCost && padded++ < MOST_PADDED) {
                pad();
            }
        }
    }

    private void swap(int part, int[] quantities) {
        PartSupply supply = market.parts().get(part);
        for (int i = 0; i < quantities.length; i++) {
            OfferCosts costs = supply.offers().get(i);
            values[costs.supplier()] += costs.costAt(quantities[i]) - costs.costAt(now[part][i]);
        }
        now[part] = quantities;
    }

    private void pad() {
        budget.spend(STEPS_FOR_PADDING);
        int[][] filled = new int[now.length][];
        for (int p = 0; p < filled.length; p++) {
            filled[p] = now[p].clone();
        }
        boolean[] ordered = market.usedBy(filled);
        for (int s = 0; s < ordered.length; s++) {
            ordered[s] |= forced[s];
        }
        if (Padding.pad(market, filled, ordered)) {
            long cost = Market.sum(market.valuesOf(filled));
            if (cost < bestCost) {
                bestCost = cost;
                best = filled;
            }
        }
    }

    /** Less of one offer and as much as then is open of another; null when it is no trade. */
    private int @Nullable [] drawn(PartSupply part, int[] quantities) {
        int count = quantities.length;
        int from = random.nextInt(count);
        int to = random.nextInt(count);
        OfferCosts more = part.offers().get(to);
        boolean isOpen = forced[more.supplier()] || values[more.supplier()] > 0;
        if (from == to || quantities[from] == 0 || !isOpen) {
            return null;
        }
        int[] drawn = quantities.clone();
        int pack = part.offers().get(from).packSize();
        drawn[from] =
                random.nextBoolean()
                        ? 0
                        : quantities[from] - pack * (1 + random.nextInt(quantities[from] / pack));
        int open = part.need();
        for (int i = 0; i < count; i++) {
            open -= i == to ? 0 : drawn[i];
        }
        drawn[to] = more.packsUp(Math.max(0, open));
        return drawn;
    }

    private long costWithLacks() {
        long cost = 0;
        for (int s = 0; s < values.length; s++) {
            cost += forced[s] || values[s] > 0 ? Math.max(values[s], market.minimums()[s]) : 0;
        }
        return cost;
    }
}
