package org.fusewright.core.quote;

/** What can be done with a quote. */
public enum QuoteAction {
    CHANGE("change"),
    SEND("send"),
    DISCARD("discard"),
    ACCEPT("accept"),
    DECLINE("decline"),
    REVISE("revise"),
    FULFIL("fulfil");

    private final String code;

    QuoteAction(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
