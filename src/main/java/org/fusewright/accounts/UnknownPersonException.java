package org.fusewright.accounts;

/** There is no account with this id. */
public final class UnknownPersonException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownPersonException(long id) {
        super("no person " + id);
    }
}
