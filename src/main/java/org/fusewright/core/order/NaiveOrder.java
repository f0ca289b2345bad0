package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The order that a person in a hurry writes: each part from the offer whose single pack is cheapest
 * by the piece, in as many packs as it takes, and orders below a minimum filled up.
 */
final class NaiveOrder {

    private static final Comparator<OfferCosts> CHEAPEST_PACK =
            Comparator.comparing(
                    (OfferCosts costs) -> {
                        Offer offer = costs.offer();
                        return offer.unitPriceAt(offer.packSize());
                    });

    private NaiveOrder() {}

    /** What it costs in minor units; empty when a minimum order cannot be reached. */
    static Optional<Long> cost(Market market) {
        int[][] quantities = new int[market.parts().size()][];
        for (int p = 0; p < quantities.length; p++) {
            PartSupply part = market.parts().get(p);
            List<OfferCosts> offers = part.offers();
            int cheapest = offers.indexOf(offers.stream().min(CHEAPEST_PACK).orElseThrow());
            quantities[p] = new int[offers.size()];
            quantities[p][cheapest] = offers.get(cheapest).packsUp(part.need());
        }
        return FillUp.fill(market, quantities)
                ? Optional.of(Market.sum(market.valuesOf(quantities)))
                : Optional.empty();
    }
}
