package org.fusewright.jobs;

import tools.jackson.databind.JsonNode;

import java.time.Instant;

/** What a job was at one time. */
public record JobRevision(int revision, Instant changedAt, String changedBy, JsonNode document) {}
