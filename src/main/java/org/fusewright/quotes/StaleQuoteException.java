package org.fusewright.quotes;

/** The quote was changed by somebody else in the meantime; nothing was done. */
public final class StaleQuoteException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StaleQuoteException(long id) {
        super("quote " + id + " was changed in the meantime");
    }
}
