package org.fusewright.orders;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What somebody asks of a proposal, as typed.
 *
 * @param currency empty for the first in which there are offers
 * @param wantedBy a day as 2026-12-31; empty when there is no hurry
 * @param wirePercent empty for the usual one
 */
public record WishesForm(String currency, String wantedBy, String wirePercent) {
    private static final int MOST_PERCENT = 100;
    private static final int MOST_YEARS = 5;

    /**
     * @throws MalformedJobException with all that is wrong
     */
    public ProposalWishes read(List<CurrencyUnit> currencies, LocalDate today) {
        List<JobProblem> problems = new ArrayList<>();
        ProposalWishes wishes =
                new ProposalWishes(
                        readCurrency(currencies, problems),
                        readDay(today, problems),
                        readPercent(problems));
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return wishes;
    }

    private CurrencyUnit readCurrency(List<CurrencyUnit> currencies, List<JobProblem> problems) {
        if (currency.isEmpty()) {
            return currencies.isEmpty() ? CurrencyUnit.EUR : currencies.getFirst();
        }
        for (CurrencyUnit unit : currencies) {
            if (unit.getCode().equals(currency)) {
                return unit;
            }
        }
        problems.add(JobProblem.of("/currency", "wrong.must-be-one-of", currencies.toString()));
        return CurrencyUnit.EUR;
    }

    private Optional<LocalDate> readDay(LocalDate today, List<JobProblem> problems) {
        if (wantedBy.isEmpty()) {
            return Optional.empty();
        }
        try {
            LocalDate day = LocalDate.parse(wantedBy);
            if (!day.isBefore(today) && day.isBefore(today.plusYears(MOST_YEARS))) {
                return Optional.of(day);
            }
        } catch (DateTimeException notADay) {
            // Told below, like a day that is gone.
        }
        problems.add(
                JobProblem.of(
                        "/wantedBy",
                        "wrong.wanted-by",
                        today.toString(),
                        today.plusDays(14).toString()));
        return Optional.empty();
    }

    private BigDecimal readPercent(List<JobProblem> problems) {
        if (wirePercent.isEmpty()) {
            return ProposalWishes.USUAL_WIRE_PERCENT;
        }
        if (wirePercent.matches("\\d{1,3}([.,]\\d{1,2})?")) {
            BigDecimal percent = new BigDecimal(wirePercent.replace(',', '.'));
            if (percent.compareTo(BigDecimal.valueOf(MOST_PERCENT)) <= 0) {
                return percent;
            }
        }
        problems.add(JobProblem.of("/wirePercent", "wrong.percent"));
        return ProposalWishes.USUAL_WIRE_PERCENT;
    }
}
