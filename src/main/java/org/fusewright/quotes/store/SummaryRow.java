package org.fusewright.quotes.store;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * A quote in a list.
 *
 * @param total of the accepted variant, else the lowest of all
 */
public record SummaryRow(
        long id,
        String number,
        int revision,
        String state,
        String jobReference,
        String title,
        String customer,
        LocalDate quotedOn,
        LocalDate validUntil,
        String currency,
        BigDecimal total,
        int variants,
        boolean fulfilled) {}
