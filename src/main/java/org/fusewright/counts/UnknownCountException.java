package org.fusewright.counts;

/** There is no such count. */
public final class UnknownCountException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownCountException(long id) {
        super("no count " + id);
    }
}
