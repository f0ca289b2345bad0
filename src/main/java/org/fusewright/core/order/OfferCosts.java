package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Offer.PriceBreak;
import org.fusewright.core.pricing.LinePrice;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * What an offer costs by quantity, in minor units. Quantities are whole packs; each lies in the
 * stretch of one price break.
 */
final class OfferCosts {

    /** From {@code first} to {@code last} pieces, both whole packs, at one price. */
    record Stretch(int first, int last, LinePrice price, double exactPrice) {}

    private final Offer offer;
    private final int supplier;
    private final Stretch[] stretches;

    OfferCosts(Offer offer, int supplier) {
        this.offer = offer;
        this.supplier = supplier;
        List<PriceBreak> breaks = offer.breaks();
        List<Stretch> found = new ArrayList<>();
        for (int b = 0; b < breaks.size(); b++) {
            int first = packsUp(breaks.get(b).fromQuantity());
            int last =
                    b + 1 < breaks.size()
                            ? packsUp(breaks.get(b + 1).fromQuantity()) - offer.packSize()
                            : packsUp(Need.MOST);
            if (first <= last) {
                LinePrice price = LinePrice.of(breaks.get(b).unitPrice());
                found.add(new Stretch(first, last, price, price.exact()));
            }
        }
        stretches = found.toArray(Stretch[]::new);
    }

    Offer offer() {
        return offer;
    }

    /** The place of its supplier among the suppliers. */
    int supplier() {
        return supplier;
    }

    int packSize() {
        return offer.packSize();
    }

    /** By rising quantity. */
    Stretch[] stretches() {
        return stretches;
    }

    /** The least quantity in whole packs that is not below this one. */
    int packsUp(int quantity) {
        int pack = offer.packSize();
        return Math.toIntExact(((long) quantity + pack - 1) / pack * pack);
    }

    /** The cost of a quantity in whole packs. */
    long costAt(int quantity) {
        if (quantity == 0) {
            return 0;
        }
        int at = stretches.length - 1;
        while (at > 0 && stretches[at].first() > quantity) {
            at--;
        }
        return stretches[at].price().extend(quantity);
    }

    /** The quantity in whole packs that costs least of those from {@code from} on. */
    int cheapestFrom(int from) {
        int cheapest = packsUp(from);
        for (Stretch stretch : stretches) {
            if (stretch.first() > cheapest && costAt(stretch.first()) < costAt(cheapest)) {
                cheapest = stretch.first();
            }
        }
        return cheapest;
    }

    /** The least quantity from {@code from} on that is worth so much; empty when none is. */
    OptionalInt leastWorth(long minor, int from) {
        for (Stretch stretch : stretches) {
            if (stretch.last() < from || stretch.exactPrice() <= 0) {
                continue;
            }
            long about = (long) Math.floor((minor - 1) / stretch.exactPrice());
            if (about > stretch.last()) {
                continue;
            }
            int quantity = packsUp((int) Math.max(about, Math.max(stretch.first(), from)));
            while (quantity <= stretch.last() && stretch.price().extend(quantity) < minor) {
                quantity += offer.packSize();
            }
            if (quantity <= stretch.last()) {
                return OptionalInt.of(quantity);
            }
        }
        return OptionalInt.empty();
    }
}
