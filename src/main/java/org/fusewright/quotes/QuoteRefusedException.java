package org.fusewright.quotes;

/** What a quote does not allow as it stands; the message is for the person who asked. */
public final class QuoteRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    QuoteRefusedException(String reason) {
        super(reason);
    }

    public String reason() {
        return String.valueOf(getMessage());
    }
}
