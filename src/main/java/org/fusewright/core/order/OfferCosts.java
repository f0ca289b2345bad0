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
    record Stretch(int first, int last, LinePrice price) {}

    private final Offer offer;
    private final int supplier;
    private final List<Stretch> stretches = new ArrayList<>();

    OfferCosts(Offer offer, int supplier) {
        this.offer = offer;
        this.supplier = supplier;
        List<PriceBreak> breaks = offer.breaks();
        for (int b = 0; b < breaks.size(); b++) {
            int first = packsUp(breaks.get(b).fromQuantity());
            int last =
                    b + 1 < breaks.size()
                            ? packsUp(breaks.get(b + 1).fromQuantity()) - offer.packSize()
                            : Integer.MAX_VALUE - offer.packSize();
            if (first <= last) {
                stretches.add(
                        new Stretch(first, last, LinePrice.of(breaks.get(b).unitPrice())));
            }
        }
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

    List<Stretch> stretches() {
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
        Stretch at = stretches.getFirst();
        for (Stretch stretch : stretches) {
            if (stretch.first() <= quantity) {
                at = stretch;
            }
        }
        return at.price().extend(quantity);
    }

    /** What the first packs cost beyond which no price changes any more. */
    int lastChange() {
        return stretches.getLast().first();
    }

    /**
     * The quantities that may be the cheapest way to have at least so many: in each stretch the
     * least one.
     */
    int[] leastCovering(int quantity) {
        int exact = packsUp(quantity);
        return stretches.stream()
                .mapToInt(stretch -> Math.max(stretch.first(), exact))
                .distinct()
                .toArray();
    }

    /** The least quantity from {@code from} on that is worth so much; empty when none is. */
    OptionalInt leastWorth(long minor, int from) {
        for (Stretch stretch : stretches) {
            double price = stretch.price().exact();
            if (stretch.last() < from || price <= 0) {
                continue;
            }
            long about = (long) Math.floor((minor - 1) / price);
            int quantity =
                    packsUp(Math.clamp(about, Math.max(stretch.first(), from), Need.MOST));
            while (quantity <= stretch.last() && stretch.price().extend(quantity) < minor) {
                quantity += offer.packSize();
            }
            if (quantity <= stretch.last() && quantity <= Need.MOST) {
                return OptionalInt.of(quantity);
            }
        }
        return OptionalInt.empty();
    }
}
