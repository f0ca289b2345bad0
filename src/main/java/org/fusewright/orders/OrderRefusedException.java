package org.fusewright.orders;

/** What an order does not allow as it stands; the message is for the person who asked. */
public final class OrderRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OrderRefusedException(String reason) {
        super(reason);
    }

    public String reason() {
        return String.valueOf(getMessage());
    }
}
