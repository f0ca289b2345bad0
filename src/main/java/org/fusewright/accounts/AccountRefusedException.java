package org.fusewright.accounts;

import org.fusewright.core.words.Text;

/** An account is not changed as asked; the reason is for people. */
public final class AccountRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Text reason;

    AccountRefusedException(Text reason) {
        super(reason.english());
        this.reason = reason;
    }

    public Text reason() {
        return reason;
    }
}
