package org.fusewright.core.kit;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Wire;
import org.joda.money.BigMoney;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.List;

/**
 * One line of the parts list.
 *
 * @param quantity pieces, or metres for wire
 * @param usedAt each place that needs it: cavities, positions, blocks, splices, leads
 * @param extended quantity times unit price, rounded half up to the minor unit
 * @param massG mass of the whole line
 * @param contains for a bagged set: what one bag holds
 * @param surplus for a bagged set: what is left over of all its bags
 */
public record PartLine(
        Part part,
        PartGroup group,
        BigDecimal quantity,
        List<String> usedAt,
        BigMoney unitPrice,
        Money extended,
        double massG,
        List<BaggedSet.Content> contains,
        List<BaggedSet.Content> surplus) {

    public PartLine {
        usedAt = List.copyOf(usedAt);
        contains = List.copyOf(contains);
        surplus = List.copyOf(surplus);
    }

    /** The same line at no price at all. */
    PartLine withoutPrice() {
        return new PartLine(
                part,
                group,
                quantity,
                usedAt,
                BigMoney.zero(unitPrice.getCurrencyUnit()),
                Money.zero(extended.getCurrencyUnit()),
                massG,
                contains,
                surplus);
    }

    /** The unit of the quantity: "m" for wire, else "each". */
    public String unit() {
        return part instanceof Wire ? "m" : "each";
    }
}
