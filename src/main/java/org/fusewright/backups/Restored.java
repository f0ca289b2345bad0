package org.fusewright.backups;

import java.time.Instant;

/**
 * What a restore did.
 *
 * @param takenAt when the backup was taken
 * @param rows of all tables together
 * @param formerData the schema of the database that keeps what was there before, until the next
 *     restore
 */
public record Restored(Instant takenAt, int tables, long rows, String formerData) {}
