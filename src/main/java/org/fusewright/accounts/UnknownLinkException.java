package org.fusewright.accounts;

/** A link for choosing a password that was never made, was used, or has run out. */
public final class UnknownLinkException extends RuntimeException {
    private static final long serialVersionUID = 1L;
}
