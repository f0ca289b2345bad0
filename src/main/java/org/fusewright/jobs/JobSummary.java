package org.fusewright.jobs;

import java.time.Instant;

/** A job in a list. */
public record JobSummary(
        long id,
        String reference,
        String title,
        String customer,
        int revision,
        long version,
        Instant changedAt,
        String changedBy) {}
