package org.fusewright.core.quote;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Where a quote stands, and what can be done with it there. */
public enum QuoteState {
    DRAFT("draft", EnumSet.of(QuoteAction.CHANGE, QuoteAction.SEND, QuoteAction.DISCARD)),
    SENT("sent", EnumSet.of(QuoteAction.ACCEPT, QuoteAction.DECLINE, QuoteAction.REVISE)),
    ACCEPTED("accepted", EnumSet.of(QuoteAction.FULFIL)),
    DECLINED("declined", EnumSet.of(QuoteAction.REVISE)),
    /** Sent, not answered, and past its last day; never kept, but told by the date. */
    EXPIRED("expired", EnumSet.of(QuoteAction.DECLINE, QuoteAction.REVISE));

    private final String code;
    private final Set<QuoteAction> actions;

    QuoteState(String code, Set<QuoteAction> actions) {
        this.code = code;
        this.actions = actions;
    }

    public String code() {
        return code;
    }

    public static Optional<QuoteState> parse(String code) {
        return Stream.of(values()).filter(state -> state.code.equals(code)).findFirst();
    }

    public boolean allows(QuoteAction action) {
        return actions.contains(action);
    }

    /** The state on a day: one that was sent expires after its last day. */
    public QuoteState on(LocalDate today, LocalDate validUntil) {
        return this == SENT && today.isAfter(validUntil) ? EXPIRED : this;
    }
}
