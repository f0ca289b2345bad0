package org.fusewright.core.quote;

import org.joda.money.BigMoney;

import java.math.RoundingMode;

/**
 * What sending one parcel costs the customer.
 *
 * @param upToG the heaviest parcel of the class in grams, included
 */
public record ShippingClass(String code, String title, int upToG, BigMoney price) {

    /** The price is kept with the decimals that it needs, so that equal classes are equal. */
    public ShippingClass {
        if (upToG < 1) {
            throw new IllegalArgumentException("upToG must be 1 or more, not " + upToG);
        }
        if (price.isNegative()) {
            throw new IllegalArgumentException("a price must not be negative");
        }
        int decimals =
                Math.max(
                        price.getCurrencyUnit().getDecimalPlaces(),
                        price.getAmount().stripTrailingZeros().scale());
        price = price.withScale(decimals, RoundingMode.UNNECESSARY);
    }
}
