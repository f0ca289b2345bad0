package org.fusewright.quotes.store;

import org.jspecify.annotations.Nullable;

import java.time.Instant;

/** A row of {@code quote}. */
public record QuoteRow(
        long id,
        String number,
        long jobId,
        String jobReference,
        String title,
        String customer,
        int revision,
        long version,
        @Nullable Instant fulfilledAt,
        Instant createdAt,
        Instant changedAt) {}
