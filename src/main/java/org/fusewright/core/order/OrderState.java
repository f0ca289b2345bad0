package org.fusewright.core.order;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What has become of a purchase order. */
public enum OrderState {
    DRAFT("draft"),
    SENT("sent"),
    PARTLY_RECEIVED("partly received"),
    RECEIVED("received"),
    CANCELLED("cancelled");

    private final String code;

    OrderState(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public Text title() {
        return Phrase.of("order.state." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    public static Optional<OrderState> parse(String code) {
        return Stream.of(values()).filter(state -> state.code.equals(code)).findFirst();
    }

    /** Whether goods may still come for it. */
    public boolean isOpen() {
        return this == SENT || this == PARTLY_RECEIVED;
    }
}
