package org.fusewright.jobs;

import tools.jackson.databind.JsonNode;

/**
 * A thing that two people changed in different ways, starting from the same revision.
 *
 * @param kind what each of them did
 * @param pointer where it stands in the merged document: the field, the row that one of them
 *     removed, or the list that the removed row was in
 * @param subject what it is of, such as "circuit pump"
 * @param field what of it clashes; empty for a whole row
 * @param mine the value that was not taken, in words
 * @param theirs the value that stands, in words
 * @param value the value that was not taken; a row where the other one removed it
 */
public record JobClash(
        Kind kind,
        String pointer,
        String subject,
        String field,
        String mine,
        String theirs,
        JsonNode value) {
    /** What the two did. */
    public enum Kind {
        BOTH_CHANGED,
        I_REMOVED_IT,
        THEY_REMOVED_IT
    }

    /** What it is about, such as "run of circuit pump". */
    public String about() {
        return field.isEmpty() || subject.isEmpty() ? field + subject : field + " of " + subject;
    }
}
