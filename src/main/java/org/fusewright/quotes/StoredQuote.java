package org.fusewright.quotes;

import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteState;
import org.fusewright.core.quote.VariantKind;

import tools.jackson.databind.JsonNode;

import java.time.Instant;
import java.util.Optional;

/**
 * A quote as kept, in its newest revision or in an earlier one.
 *
 * @param version moves with every change; a change must name it
 * @param newest the number of the newest revision
 * @param state on the day of asking
 * @param document the quote as JSON text, as it is kept
 * @param wishes what the quote was made from, beside its job
 * @param changes against the revision before; empty for the first
 * @param fulfilledAt when the kits of the accepted quote were delivered
 */
public record StoredQuote(
        long id,
        long jobId,
        long version,
        int newest,
        QuoteState state,
        Quote quote,
        String document,
        JsonNode wishes,
        Optional<QuoteChanges> changes,
        Optional<VariantKind> accepted,
        Instant createdAt,
        Instant changedAt,
        Optional<Instant> sentAt,
        Optional<Instant> decidedAt,
        Optional<Instant> fulfilledAt) {

    public boolean isNewest() {
        return quote.revision() == newest;
    }
}
