package org.fusewright.quotes;

import org.fusewright.core.quote.QuoteState;
import org.joda.money.Money;

import java.time.LocalDate;

/**
 * A quote in a list, in its newest revision.
 *
 * @param total of the accepted variant, else the lowest of all
 * @param variants how many there are
 */
public record QuoteSummary(
        long id,
        String number,
        int revision,
        QuoteState state,
        String jobReference,
        String title,
        String customer,
        LocalDate quotedOn,
        LocalDate validUntil,
        Money total,
        int variants,
        boolean fulfilled) {}
