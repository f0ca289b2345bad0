package org.fusewright.orders;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/** What an order does not allow as it stands; the message is for the person who asked. */
public final class OrderRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Text reason;

    OrderRefusedException(String key, Object... values) {
        this(Phrase.of(key, values));
    }

    private OrderRefusedException(Text reason) {
        super(reason.english());
        this.reason = reason;
    }

    public Text reason() {
        return reason;
    }
}
