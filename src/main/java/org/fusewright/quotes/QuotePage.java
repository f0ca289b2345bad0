package org.fusewright.quotes;

import java.util.List;
import java.util.OptionalLong;

/**
 * Some quotes of a longer list.
 *
 * @param next what to ask after for the rest; empty at the end
 */
public record QuotePage(List<QuoteSummary> quotes, OptionalLong next) {
    public QuotePage {
        quotes = List.copyOf(quotes);
    }
}
