package org.fusewright.core.order;

import java.util.OptionalInt;

/** Fills up orders below their supplier's minimum with more of the same parts, quickly. */
final class FillUp {

    private FillUp() {}

    /**
     * Adds to each order that lacks something the one offer's packs that lift it over its minimum
     * at least cost. Changes {@code quantities}.
     *
     * @return whether every order that is made reaches its minimum
     */
    static boolean fill(Market market, int[][] quantities) {
        long[] values = market.valuesOf(quantities);
        boolean[] used = market.usedBy(quantities);
        for (int s = 0; s < values.length; s++) {
            if (used[s]
                    && values[s] < market.minimums()[s]
                    && !fill(market, quantities, s, market.minimums()[s] - values[s])) {
                return false;
            }
        }
        return true;
    }

    private static boolean fill(Market market, int[][] quantities, int supplier, long lacking) {
        long least = Long.MAX_VALUE;
        int part = -1;
        int offer = -1;
        int quantity = 0;
        for (int p = 0; p < quantities.length; p++) {
            for (int i = 0; i < quantities[p].length; i++) {
                OfferCosts costs = market.parts().get(p).offers().get(i);
                if (costs.supplier() != supplier) {
                    continue;
                }
                int now = quantities[p][i];
                long before = costs.costAt(now);
                OptionalInt more = costs.leastWorth(before + lacking, now + costs.packSize());
                if (more.isPresent() && costs.costAt(more.getAsInt()) - before < least) {
                    least = costs.costAt(more.getAsInt()) - before;
                    part = p;
                    offer = i;
                    quantity = more.getAsInt();
                }
            }
        }
        if (part < 0) {
            return false;
        }
        quantities[part][offer] = quantity;
        return true;
    }
}
