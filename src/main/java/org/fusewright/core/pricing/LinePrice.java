package org.fusewright.core.pricing;

import org.joda.money.BigMoney;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * A unit price made ready for extending it to many quantities: the same amount as {@link
 * PriceList#extend} gives, as a whole number of the currency's minor units.
 */
public final class LinePrice {

    private static final int MOST_DECIMALS = 15;

    private final long unscaled;
    private final long divisor;

    private LinePrice(long unscaled, long divisor) {
        this.unscaled = unscaled;
        this.divisor = divisor;
    }

    /**
     * @throws IllegalArgumentException when the price is negative, or too large or too fine to be
     *     counted
     */
    public static LinePrice of(BigMoney unitPrice) {
        int minor = unitPrice.getCurrencyUnit().getDecimalPlaces();
        BigDecimal amount = unitPrice.getAmount();
        int decimals = Math.max(minor, amount.stripTrailingZeros().scale());
        BigInteger units = amount.setScale(decimals, RoundingMode.UNNECESSARY).unscaledValue();
        if (units.signum() < 0 || units.bitLength() > 62 || decimals - minor > MOST_DECIMALS) {
            throw new IllegalArgumentException("cannot count with a unit price of " + unitPrice);
        }
        return new LinePrice(units.longValueExact(), (long) Math.pow(10, decimals - minor));
    }

    /** Quantity times unit price in minor units, rounded half up. */
    public long extend(long quantity) {
        if (Math.multiplyHigh(unscaled, quantity) != 0 || unscaled * quantity < 0) {
            return BigDecimal.valueOf(unscaled)
                    .multiply(BigDecimal.valueOf(quantity))
                    .divide(BigDecimal.valueOf(divisor), 0, RoundingMode.HALF_UP)
                    .longValueExact();
        }
        return (unscaled * quantity + divisor / 2) / divisor;
    }

    /** The price of one in minor units, not rounded. */
    public double exact() {
        return (double) unscaled / divisor;
    }
}
