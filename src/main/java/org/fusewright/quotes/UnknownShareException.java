package org.fusewright.quotes;

/** A link to a quote that was never made, was taken back, or has run out. */
public final class UnknownShareException extends RuntimeException {
    private static final long serialVersionUID = 1L;
}
