package org.fusewright.core.quote;

import java.math.BigDecimal;

/**
 * A kind of customer and the tax that it pays.
 *
 * @param percent of everything on the quote, shipping included
 * @param note what the papers must say beside it; may be empty
 */
public record TaxKind(String code, String title, BigDecimal percent, String note) {
    /** For a shop that has set no taxes. */
    public static final TaxKind NONE = new TaxKind("none", "No tax", BigDecimal.ZERO, "");

    public TaxKind {
        if (percent.signum() < 0) {
            throw new IllegalArgumentException("a tax must not be negative");
        }
        percent = Percent.plain(percent);
    }
}
