package org.fusewright.core.quote;

import org.fusewright.core.pricing.PriceList;
import org.joda.money.BigMoney;
import org.joda.money.Money;

import java.math.BigDecimal;

/**
 * One line of a quote, over all its kits.
 *
 * @param group the parts list's group, or "labour", or "shipping"
 * @param code part number, labour task or shipping class; within its group it stands once
 * @param detail how the quantity comes about, where that needs saying; may be empty
 * @param unit "each", "m", "min" or "parcel"
 * @param unitCost what {@code per} units cost the shop; not for the customer's eyes
 * @param source who sells it to the shop; empty for what nobody does
 * @param markUpPercent on top of the cost
 * @param unitPrice what {@code per} units cost the customer, exact
 * @param per how many units the unit price is for: 60 where an hour's price is for minutes
 * @param cost quantity times unit cost, rounded half up once
 * @param price quantity times unit price, rounded half up once
 */
public record QuoteLine(
        LineKind kind,
        String group,
        String code,
        String title,
        String detail,
        BigDecimal quantity,
        String unit,
        BigMoney unitCost,
        String source,
        BigDecimal markUpPercent,
        BigMoney unitPrice,
        int per,
        Money cost,
        Money price) {

    /** Works the prices out of cost and mark-up. */
    static QuoteLine of(
            LineKind kind,
            String group,
            String code,
            String title,
            String detail,
            BigDecimal quantity,
            String unit,
            BigMoney unitCost,
            String source,
            BigDecimal markUpPercent,
            int per) {
        BigDecimal factor = BigDecimal.ONE.add(markUpPercent.movePointLeft(2));
        BigMoney unitPrice = plain(unitCost.multipliedBy(factor));
        BigDecimal units = BigDecimal.valueOf(per);
        return new QuoteLine(
                kind,
                group,
                code,
                title,
                detail,
                plain(quantity),
                unit,
                plain(unitCost),
                source,
                markUpPercent,
                unitPrice,
                per,
                PriceList.extend(unitCost, quantity, units),
                PriceList.extend(unitPrice, quantity, units));
    }

    /** Without idle zeros beyond the currency's own decimals, so that equal prices are equal. */
    private static BigMoney plain(BigMoney price) {
        BigDecimal amount = price.getAmount().stripTrailingZeros();
        int decimals = Math.max(amount.scale(), price.getCurrencyUnit().getDecimalPlaces());
        return price.withAmount(amount.setScale(decimals));
    }

    private static BigDecimal plain(BigDecimal quantity) {
        BigDecimal stripped = quantity.stripTrailingZeros();
        return stripped.setScale(Math.max(0, stripped.scale()));
    }
}
