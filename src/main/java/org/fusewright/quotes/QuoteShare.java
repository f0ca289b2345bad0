package org.fusewright.quotes;

import java.time.Instant;
import java.util.Optional;

/**
 * A link by which somebody without an account reads one revision of a quote as it was sent.
 *
 * @param revokedAt when the shop took it back
 */
public record QuoteShare(
        long id,
        long quoteId,
        int revision,
        Instant createdAt,
        Instant expiresAt,
        Optional<Instant> revokedAt) {

    /** Whether the link opens the quote. */
    public boolean holds(Instant now) {
        return revokedAt.isEmpty() && now.isBefore(expiresAt);
    }
}
