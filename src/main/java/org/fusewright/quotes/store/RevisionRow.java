package org.fusewright.quotes.store;

import org.jspecify.annotations.Nullable;

import java.time.Instant;
import java.time.LocalDate;

/** A row of {@code quote_revision} without the papers. */
public record RevisionRow(
        int revision,
        String state,
        LocalDate quotedOn,
        LocalDate validUntil,
        String wishes,
        String document,
        int schemaVersion,
        @Nullable Instant sentAt,
        @Nullable Instant decidedAt,
        @Nullable String variant) {}
