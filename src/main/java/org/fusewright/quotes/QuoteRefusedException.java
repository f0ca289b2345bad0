package org.fusewright.quotes;

import org.fusewright.core.words.Text;

/** What a quote does not allow as it stands; the message is for the person who asked. */
public final class QuoteRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Text reason;

    QuoteRefusedException(Text reason) {
        super(reason.english());
        this.reason = reason;
    }

    public Text reason() {
        return reason;
    }
}
