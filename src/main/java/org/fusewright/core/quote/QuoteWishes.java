package org.fusewright.core.quote;

import java.util.List;

/**
 * What a person decides about a quote.
 *
 * @param kits how many equal kits
 * @param validDays how long it stands, counted from its date
 * @param shipped whether the kits are sent; else the customer fetches them
 */
public record QuoteWishes(
        int kits,
        List<VariantKind> variants,
        TaxKind tax,
        boolean shipped,
        int validDays,
        List<String> terms,
        List<String> notIncluded) {

    public QuoteWishes {
        variants = List.copyOf(variants);
        terms = List.copyOf(terms);
        notIncluded = List.copyOf(notIncluded);
    }
}
