package org.fusewright.jobs;

import tools.jackson.databind.JsonNode;

import java.time.Instant;

/**
 * A job as kept.
 *
 * @param revision counts the changes of its document, from 1
 * @param version moves with every change; a change must name it
 * @param document as the user gave it, without defaults
 */
public record StoredJob(
        long id,
        String reference,
        String title,
        String customer,
        int revision,
        long version,
        JsonNode document,
        Instant createdAt,
        Instant changedAt,
        String changedBy) {}
