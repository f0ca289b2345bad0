package org.fusewright.counts;

/** A count is signed, so it stays as it is. */
public final class SignedCountException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    SignedCountException(long id) {
        super("count " + id + " is signed");
    }
}
