package org.fusewright.core.pricing;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What one piece of each part costs the shop, in one currency. The unit price of a part is the
 * lowest among its offers when one pack is bought: the price break that the pack's size reaches. A
 * part without an offer in this currency has no price and counts as not stocked.
 */
public final class PriceList {

    private final CurrencyUnit currency;
    private final Map<PartNumber, BigMoney> unitPrices = new HashMap<>();
    private final Map<PartNumber, Long> unitMicros = new HashMap<>();
    private final Map<PartNumber, Long> microsOfParts = new IdentityHashMap<>();

    private PriceList(Catalog catalog, CurrencyUnit currency) {
        this.currency = currency;
        for (Part part : catalog.listParts()) {
            findUnitPrice(catalog, part.number(), currency)
                    .ifPresent(price -> unitPrices.put(part.number(), price));
        }
        unitPrices.forEach((part, price) -> unitMicros.put(part, micros(price)));
        for (Part part : catalog.listParts()) {
            microsOfParts.put(part.number(), unitMicros.getOrDefault(part.number(), 0L));
        }
    }

    private static long micros(BigMoney price) {
        return price.getAmount()
                .movePointRight(6)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    public static PriceList of(Catalog catalog, CurrencyUnit currency) {
        return new PriceList(catalog, currency);
    }

    /** The currencies in which the catalog has offers, by code. */
    public static List<CurrencyUnit> listCurrencies(Catalog catalog) {
        return catalog.listCurrencies();
    }

    /** The unit price of a single part, without a list of all. */
    public static Optional<BigMoney> findUnitPrice(
            Catalog catalog, PartNumber part, CurrencyUnit currency) {
        @Nullable BigMoney lowest = null;
        for (Offer offer : catalog.listOffers(part)) {
            if (offer.currency().equals(currency)) {
                BigMoney price = offer.unitPriceAt(offer.packSize());
                lowest = lowest == null || lowest.isGreaterThan(price) ? price : lowest;
            }
        }
        return Optional.ofNullable(lowest);
    }

    public CurrencyUnit currency() {
        return currency;
    }

    public boolean isStocked(PartNumber part) {
        return unitPrices.containsKey(part);
    }

    public Optional<BigMoney> findUnitPrice(PartNumber part) {
        return Optional.ofNullable(unitPrices.get(part));
    }

    /** The unit price, or nothing at all for a part that is not stocked. */
    public BigMoney unitPriceOrZero(PartNumber part) {
        BigMoney price = unitPrices.get(part);
        return price == null ? BigMoney.zero(currency) : price;
    }

    /** The unit price in whole millionths, for searches that compare sums; 0 when not stocked. */
    public long unitPriceMicros(PartNumber part) {
        // Searches ask with the catalog's own numbers, thousands of times for one kit.
        Long known = microsOfParts.get(part);
        return known == null ? unitMicros.getOrDefault(part, 0L) : known;
    }

    /**
     * The price of a line: quantity times unit price in the currency's minor unit (ISO 4217),
     * rounded half up once a line. Prices are rounded here and nowhere else.
     */
    public static Money extend(BigMoney unitPrice, BigDecimal quantity) {
        return unitPrice.multipliedBy(quantity).toMoney(RoundingMode.HALF_UP);
    }

    /**
     * The same where the price is not for one but for {@code per} units: an hour's price for
     * minutes, a percentage of an amount.
     */
    public static Money extend(BigMoney price, BigDecimal quantity, BigDecimal per) {
        CurrencyUnit currency = price.getCurrencyUnit();
        BigDecimal amount =
                price.getAmount()
                        .multiply(quantity)
                        .divide(per, currency.getDecimalPlaces(), RoundingMode.HALF_UP);
        return Money.of(currency, amount);
    }
}
