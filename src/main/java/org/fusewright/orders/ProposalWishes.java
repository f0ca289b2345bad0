package org.fusewright.orders;

import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What somebody asks of a proposal.
 *
 * @param wantedBy the day on which the goods must be there
 * @param wirePercent waste on top of the wire that quotes need
 */
public record ProposalWishes(
        CurrencyUnit currency, Optional<LocalDate> wantedBy, BigDecimal wirePercent) {

    /**
     * The usual trade range of waste on wire is 3 to 10 %: common practice, no published source.
     */
    public static final BigDecimal USUAL_WIRE_PERCENT = BigDecimal.valueOf(5);
}
