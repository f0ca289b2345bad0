package org.fusewright.core.order;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * What the shop is short of in one part, in pieces (metres, for wire): what accepted quotes need,
 * with waste, and the least that should lie on the shelf, less what lies there and what is ordered.
 *
 * @param needed by accepted quotes, without waste
 * @param waste offcuts on top of what is needed; only wire has any
 * @param minimum what should be left on the shelf
 * @param ordered what is on its way or in a draft
 */
public record PartDemand(
        PartNumber part,
        BigDecimal needed,
        BigDecimal waste,
        BigDecimal minimum,
        BigDecimal onHand,
        BigDecimal ordered) {

    private static final int DECIMALS = 3;

    public PartDemand {
        needed = plain(needed);
        waste = plain(waste);
        minimum = plain(minimum);
        onHand = plain(onHand);
        ordered = plain(ordered);
        if (needed.signum() < 0
                || waste.signum() < 0
                || minimum.signum() < 0
                || ordered.signum() < 0) {
            throw new IllegalArgumentException("a demand must not be negative: " + part);
        }
    }

    /** Offcuts of so many metres, rounded up to a millimetre. */
    public static BigDecimal wasteOf(BigDecimal metres, BigDecimal percent) {
        return metres.multiply(percent).movePointLeft(2).setScale(DECIMALS, RoundingMode.UP);
    }

    /** What is missing; 0 when there is enough. */
    public BigDecimal open() {
        return plain(needed.add(waste).add(minimum).subtract(onHand).subtract(ordered))
                .max(BigDecimal.ZERO);
    }

    /** What is missing in whole pieces or metres, as offers count them. */
    public int toBuy() {
        return open().setScale(0, RoundingMode.UP).intValueExact();
    }

    private static BigDecimal plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
