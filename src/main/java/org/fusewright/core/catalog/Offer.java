package org.fusewright.core.catalog;

import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.RoundingMode;
import java.util.List;

/**
 * One supplier's price for one part.
 *
 * @param packSize pieces (metres, for wire) in the smallest pack sold
 * @param breaks unit prices from a quantity on, rising in quantity; the first starts at 1
 */
public record Offer(
        String supplier, PartNumber part, int packSize, List<PriceBreak> breaks, int leadTimeDays) {

    /**
     * The price of one piece (or metre) from so many pieces on. The price is kept with the decimals
     * that it needs, at least those of its currency, so that equal prices are equal records.
     */
    public record PriceBreak(int fromQuantity, BigMoney unitPrice) {

        public PriceBreak {
            int decimals =
                    Math.max(
                            unitPrice.getCurrencyUnit().getDecimalPlaces(),
                            unitPrice.getAmount().stripTrailingZeros().scale());
            unitPrice = unitPrice.withScale(decimals, RoundingMode.UNNECESSARY);
        }
    }

    public Offer {
        if (packSize < 1) {
            throw new IllegalArgumentException("packSize must be 1 or more, not " + packSize);
        }
        if (leadTimeDays < 0) {
            throw new IllegalArgumentException("leadTimeDays must not be negative");
        }
        breaks = List.copyOf(breaks);
        if (breaks.isEmpty() || breaks.getFirst().fromQuantity() != 1) {
            throw Require.refused("refused.breaks-from-1");
        }
        for (int i = 1; i < breaks.size(); i++) {
            if (breaks.get(i).fromQuantity() <= breaks.get(i - 1).fromQuantity()) {
                throw Require.refused("refused.breaks-rise");
            }
        }
        for (PriceBreak priceBreak : breaks) {
            if (priceBreak.unitPrice().isNegative()
                    || !priceBreak.unitPrice().isSameCurrency(breaks.getFirst().unitPrice())) {
                throw Require.refused("refused.breaks-currency");
            }
        }
    }

    public CurrencyUnit currency() {
        return breaks.getFirst().unitPrice().getCurrencyUnit();
    }

    /** The price of one piece when so many are bought. */
    public BigMoney unitPriceAt(int quantity) {
        BigMoney price = breaks.getFirst().unitPrice();
        for (PriceBreak priceBreak : breaks) {
            if (priceBreak.fromQuantity() <= quantity) {
                price = priceBreak.unitPrice();
            }
        }
        return price;
    }
}
