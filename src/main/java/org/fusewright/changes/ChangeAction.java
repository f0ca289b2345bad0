package org.fusewright.changes;

import java.util.Locale;

/** What was done to a row. */
public enum ChangeAction {
    ADDED,
    CHANGED,
    REMOVED;

    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * @throws IllegalArgumentException when there is none of this code
     */
    public static ChangeAction parse(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }
}
