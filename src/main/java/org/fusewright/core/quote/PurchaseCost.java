package org.fusewright.core.quote;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.PartNumber;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a part costs the shop when so much of it is needed: the lowest unit price among its offers
 * in one currency, each at the price break that the needed quantity reaches, or one pack where that
 * is more. What a last pack holds too much is not charged to the quote: it goes on the shelf, and
 * whole packs are the business of orders.
 */
final class PurchaseCost {
    /** An offer's price at some quantity. */
    record Unit(String supplier, BigMoney price) {}

    private static final BigDecimal MOST = BigDecimal.valueOf(Integer.MAX_VALUE);

    private final Map<PartNumber, List<Offer>> offers = new HashMap<>();

    PurchaseCost(Catalog catalog, CurrencyUnit currency) {
        for (Offer offer : catalog.listOffers()) {
            if (offer.currency().equals(currency)) {
                offers.computeIfAbsent(offer.part(), _ -> new ArrayList<>()).add(offer);
            }
        }
    }

    /** Empty when nobody offers the part; of equal prices the first supplier by code. */
    Optional<Unit> findUnit(PartNumber part, BigDecimal quantity) {
        int whole = quantity.setScale(0, RoundingMode.DOWN).min(MOST).intValueExact();
        Optional<Unit> lowest = Optional.empty();
        for (Offer offer : offers.getOrDefault(part, List.of())) {
            BigMoney price = offer.unitPriceAt(Math.max(whole, offer.packSize()));
            if (lowest.isEmpty() || price.isLessThan(lowest.get().price())) {
                lowest = Optional.of(new Unit(offer.supplier(), price));
            }
        }
        return lowest;
    }
}
