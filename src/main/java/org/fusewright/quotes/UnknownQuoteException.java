package org.fusewright.quotes;

/** There is no such quote, or no such revision of it. */
public final class UnknownQuoteException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownQuoteException(long id) {
        super("no quote " + id);
    }
}
