package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.words.Text;
import org.joda.money.Money;

import java.util.List;
import java.util.Optional;

/**
 * How to buy what is needed at least cost.
 *
 * @param lines by part, supplier and pack size
 * @param shares by supplier
 * @param total of all lines
 * @param bound no cover costs less than this
 * @param naive what the same needs cost when each part comes from the one offer that is cheapest
 *     for what is missing, and no more of it than that; a supplier's minimum order is filled up.
 *     Empty when nothing is bought
 * @param uncovered parts that cannot be had, and why
 * @param leftAside offers for needed parts that were not looked at, and why
 */
public record Cover(
        List<CoverLine> lines,
        List<SupplierShare> shares,
        Money total,
        Money bound,
        Optional<Money> naive,
        List<Uncovered> uncovered,
        List<LeftAside> leftAside) {

    /** So many pieces or metres of one offer; a whole number of its packs. */
    public record CoverLine(Offer offer, int quantity, Money extended) {}

    /** What is bought of one supplier, and the least that its order must be worth. */
    public record SupplierShare(String supplier, int lines, Money value, Optional<Money> minimum) {}

    /** A part that no offer covers. */
    public record Uncovered(PartNumber part, int quantity, Text reason) {}

    /** An offer that was not looked at. */
    public record LeftAside(Offer offer, Text reason) {}

    public Cover {
        lines = List.copyOf(lines);
        shares = List.copyOf(shares);
        uncovered = List.copyOf(uncovered);
        leftAside = List.copyOf(leftAside);
    }

    /** Whether it is proven that nothing is cheaper. */
    public boolean isOptimal() {
        return bound.isEqual(total);
    }

    /** By how much the total could still be too high; nothing when it is proven. */
    public Money gap() {
        return total.minus(bound);
    }

    /** What this cover saves against the naive one. */
    public Money saving() {
        return naive.map(cost -> cost.minus(total)).orElse(Money.zero(total.getCurrencyUnit()));
    }
}
