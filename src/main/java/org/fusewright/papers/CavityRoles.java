package org.fusewright.papers;

import org.fusewright.core.sizing.CavityRole;

/** What the terminal in a cavity does, in few letters. */
final class CavityRoles {

    /** The words for a side. */
    static final String[] TEXTS = {"print.cavity.feed", "print.cavity.load"};

    private CavityRoles() {}

    /** A word for a device's side; a relay's terminal has its number. */
    static String said(CavityRole role, Sheet sheet) {
        return switch (role) {
            case FEED -> sheet.say("print.cavity.feed");
            case LOAD -> sheet.say("print.cavity.load");
            default -> role.code();
        };
    }
}
