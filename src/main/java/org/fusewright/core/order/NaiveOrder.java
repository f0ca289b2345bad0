package org.fusewright.core.order;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The order that a person in a hurry writes: of each part what is missing and no more, all from the
 * one offer that is cheapest for it, and orders below a minimum filled up.
 */
final class NaiveOrder {

    private NaiveOrder() {}

    /** What it costs in minor units; empty when a minimum order cannot be reached. */
    static Optional<Long> cost(Market market) {
        int[][] quantities = new int[market.parts().size()][];
        for (int p = 0; p < quantities.length; p++) {
            PartSupply part = market.parts().get(p);
            List<OfferCosts> offers = part.offers();
            Comparator<OfferCosts> byCost =
                    Comparator.comparingLong(costs -> costs.costAt(costs.packsUp(part.need())));
            int cheapest = offers.indexOf(offers.stream().min(byCost).orElseThrow());
            quantities[p] = new int[offers.size()];
            quantities[p][cheapest] = offers.get(cheapest).packsUp(part.need());
        }
        return Padding.pad(market, quantities)
                ? Optional.of(Market.sum(market.valuesOf(quantities)))
                : Optional.empty();
    }
}
