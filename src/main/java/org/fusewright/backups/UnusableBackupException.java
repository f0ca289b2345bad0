package org.fusewright.backups;

import org.fusewright.core.words.Text;

/** A file that cannot be restored; nothing was changed. */
public class UnusableBackupException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Text reason;

    public UnusableBackupException(Text reason) {
        super(reason.english());
        this.reason = reason;
    }

    public Text reason() {
        return reason;
    }
}
