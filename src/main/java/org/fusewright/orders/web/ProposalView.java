package org.fusewright.orders.web;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.order.PartDemand;
import org.fusewright.orders.OrderSummary;
import org.fusewright.orders.Proposal;
import org.fusewright.orders.WishesForm;
import org.joda.money.CurrencyUnit;

import java.util.List;

/** What the page of needs and orders shows. */
public record ProposalView(
        WishesForm form,
        List<JobProblem> problems,
        List<CurrencyUnit> currencies,
        Proposal proposal,
        List<OrderSummary> found,
        int pageLength,
        String notice) {

    public List<OrderSummary> orders() {
        return found.stream().limit(pageLength).toList();
    }

    public boolean hasMore() {
        return found.size() > pageLength;
    }

    /** What is missing. */
    public List<PartDemand> missing() {
        return proposal.demands().stream().filter(demand -> demand.toBuy() > 0).toList();
    }

    /** Offers that were left aside for being too slow. */
    public long countTooSlow() {
        return proposal.cover().leftAside().stream()
                .filter(one -> one.offer().currency().equals(proposal.wishes().currency()))
                .count();
    }

    /** Offers that were left aside for their currency. */
    public long countForeign() {
        return proposal.cover().leftAside().size() - countTooSlow();
    }

    public String currency() {
        return proposal.wishes().currency().getCode();
    }
}
