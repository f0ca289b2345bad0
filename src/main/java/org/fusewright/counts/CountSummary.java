package org.fusewright.counts;

import java.time.Instant;
import java.util.Optional;

/** A count in a list. */
public record CountSummary(
        long id,
        long jobId,
        String reference,
        String title,
        int revision,
        String startedBy,
        Instant startedAt,
        Optional<String> signedBy,
        Optional<Instant> signedAt) {}
