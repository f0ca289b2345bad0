package org.fusewright.core.check;

/**
 * What a check speaks of.
 *
 * @param id the id of the circuit, feed or block; empty for the whole job
 * @param text the subject in words, unique for a code within one kit
 */
public record Subject(Scope scope, String id, String text) {

    /** The kind of thing that a subject is. */
    public enum Scope {
        JOB,
        FEED,
        CIRCUIT,
        BLOCK
    }

    public static Subject job() {
        return new Subject(Scope.JOB, "", "job");
    }

    public static Subject feed(String id) {
        return new Subject(Scope.FEED, id, "feed " + id);
    }

    public static Subject circuit(String id) {
        return new Subject(Scope.CIRCUIT, id, "circuit " + id);
    }

    public static Subject block(String id) {
        return new Subject(Scope.BLOCK, id, "block " + id);
    }

    /** A detail of this subject: "circuit pump, load Pump". */
    public Subject detail(String detail) {
        return new Subject(scope, id, text + ", " + detail);
    }
}
