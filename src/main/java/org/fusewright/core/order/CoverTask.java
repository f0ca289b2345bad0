package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What is to be bought, and what may be bought of whom.
 *
 * @param currency offers in another one are left aside: no rate of exchange is guessed
 * @param minimums the least that an order at a supplier must be worth, where it asks for that; in
 *     the task's currency
 * @param daysLeft until the goods must be there; empty when there is no hurry
 */
public record CoverTask(
        CurrencyUnit currency,
        List<Need> needs,
        List<Offer> offers,
        Map<String, Money> minimums,
        OptionalInt daysLeft) {

    public CoverTask {
        needs = needs.stream().sorted(Comparator.comparing(Need::part)).toList();
        offers = List.copyOf(offers);
        minimums = Map.copyOf(minimums);
        if (needs.stream().map(Need::part).distinct().count() < needs.size()) {
            throw new IllegalArgumentException("each part must be needed once");
        }
        for (Money minimum : minimums.values()) {
            if (minimum.isNegative() || !minimum.getCurrencyUnit().equals(currency)) {
                throw new IllegalArgumentException(
                        "a minimum order must be in " + currency + " and not negative: " + minimum);
            }
        }
    }
}
