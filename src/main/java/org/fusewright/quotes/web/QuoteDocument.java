package org.fusewright.quotes.web;

import org.fusewright.core.quote.DeviceDifference;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.quotes.QuoteText;
import org.fusewright.quotes.StoredQuote;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.util.RawValue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;

/**
 * A kept quote as the API answers it.
 *
 * @param quote the document as it is kept, byte for byte
 * @param differences circuits that the variants protect differently
 * @param changes against the revision before; null for the first
 */
record QuoteDocument(
        long id,
        long job,
        long version,
        int newestRevision,
        String state,
        @Nullable VariantKind acceptedVariant,
        Instant createdAt,
        Instant changedAt,
        @Nullable Instant sentAt,
        @Nullable Instant decidedAt,
        @Nullable Instant fulfilledAt,
        JsonNode wishes,
        RawValue quote,
        List<DeviceDifference> differences,
        @Nullable QuoteChanges changes) {

    static byte[] print(StoredQuote kept) {
        QuoteDocument document =
                new QuoteDocument(
                        kept.id(),
                        kept.jobId(),
                        kept.version(),
                        kept.newest(),
                        kept.state().code(),
                        kept.accepted().orElse(null),
                        kept.createdAt(),
                        kept.changedAt(),
                        kept.sentAt().orElse(null),
                        kept.decidedAt().orElse(null),
                        kept.fulfilledAt().orElse(null),
                        kept.wishes(),
                        new RawValue(kept.document()),
                        DeviceDifference.listIn(kept.quote()),
                        kept.changes().orElse(null));
        return QuoteText.print(document).getBytes(StandardCharsets.UTF_8);
    }
}
