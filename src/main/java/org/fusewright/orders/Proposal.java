package org.fusewright.orders;

import org.fusewright.core.order.Cover;
import org.fusewright.core.order.PartDemand;
import org.fusewright.core.words.Text;

import java.util.List;

/**
 * What is needed now, and the cheapest way to buy it.
 *
 * @param demands of all parts that something is needed of, there or not
 * @param notes what the reader should know beside it
 * @param version names the content: drafts are made of the proposal that was looked at
 */
public record Proposal(
        ProposalWishes wishes,
        List<PartDemand> demands,
        Cover cover,
        List<Text> notes,
        String version) {
    public Proposal {
        demands = List.copyOf(demands);
        notes = List.copyOf(notes);
    }
}
