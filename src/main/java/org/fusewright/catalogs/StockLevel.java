package org.fusewright.catalogs;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;

/**
 * What lies on the shelf, in pieces (metres, for wire).
 *
 * @param minimum below this it is to be ordered
 */
public record StockLevel(PartNumber part, BigDecimal onHand, BigDecimal minimum) {

    /** Amounts lose trailing zeros, so that equal amounts are equal records. */
    public StockLevel {
        onHand = plain(onHand);
        minimum = plain(minimum);
    }

    private static BigDecimal plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
