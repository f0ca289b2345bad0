package org.fusewright.orders;

/** There is no such order. */
public final class UnknownOrderException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownOrderException(long id) {
        super("no order " + id);
    }
}
