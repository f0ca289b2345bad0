package org.fusewright.jobs;

/**
 * One thing that differs between two revisions of a job, in shop language.
 *
 * @param kind whether a field changed, or a row came or went
 * @param subject what it is of, such as "circuit pump"; empty for the whole job
 * @param field what changed of it; empty for a whole row
 * @param before its value with its unit; empty for a whole row
 * @param after as before
 */
public record JobChange(Kind kind, String subject, String field, String before, String after) {
    /** What happened. */
    public enum Kind {
        CHANGED,
        ADDED,
        REMOVED
    }

    static JobChange of(String subject, String field, String before, String after) {
        return new JobChange(Kind.CHANGED, subject, field, before, after);
    }

    static JobChange row(Kind kind, String subject) {
        return new JobChange(kind, subject, "", "", "");
    }

    /** In words: "circuit pump: run 1.1 m → 1.3 m". */
    public String says() {
        return switch (kind) {
            case ADDED -> subject + " added";
            case REMOVED -> subject + " removed";
            case CHANGED ->
                    (subject.isEmpty() ? "" : subject + ": ")
                            + field
                            + " "
                            + before
                            + " → "
                            + after;
        };
    }

    /** What it is about, such as "run of circuit pump". */
    public String about() {
        return field.isEmpty() || subject.isEmpty() ? field + subject : field + " of " + subject;
    }
}
