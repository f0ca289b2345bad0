package org.fusewright.counts;

/** Somebody added to a count since it was looked at. */
public final class StaleCountException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StaleCountException(long id) {
        super("count " + id + " has moved on");
    }
}
