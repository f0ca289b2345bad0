package org.fusewright.core.quote;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.math.BigDecimal;

/**
 * A kind of customer and the tax that it pays.
 *
 * @param percent of everything on the quote, shipping included
 * @param note what the papers must say beside it; may be empty
 */
public record TaxKind(String code, String title, BigDecimal percent, String note) {
    private static final String NO_TAX = "none";

    /** For a shop that has set no taxes. */
    public static final TaxKind NONE = new TaxKind(NO_TAX, "No tax", BigDecimal.ZERO, "");

    public TaxKind {
        if (percent.signum() < 0) {
            throw new IllegalArgumentException("a tax must not be negative");
        }
        percent = Percent.plain(percent);
    }

    /** What the shop calls it; where it has set no taxes, what that is called. */
    public Text name() {
        return code.equals(NO_TAX) && title.equals(NONE.title)
                ? Phrase.of("tax.none")
                : Text.verbatim(title);
    }
}
