package org.fusewright.core.quote;

/** What can be done with a quote. */
public enum QuoteAction {
    CHANGE("changed"),
    SEND("sent"),
    DISCARD("discarded"),
    ACCEPT("accepted"),
    DECLINE("declined"),
    REVISE("revised"),
    FULFIL("fulfilled");

    private final String done;

    QuoteAction(String done) {
        this.done = done;
    }

    /** The quote after it, in one word. */
    public String done() {
        return done;
    }
}
