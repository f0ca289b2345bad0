package org.fusewright.orders;

/** Somebody changed it in the meantime; nothing was done. */
public final class StaleOrderException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StaleOrderException(String what) {
        super(what + " was changed in the meantime");
    }
}
