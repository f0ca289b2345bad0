package org.fusewright.core.sizing;

/** What a cavity's terminal does: a device's two sides, or a relay's terminals by DIN 72552. */
public enum CavityRole {
    FEED("feed"),
    LOAD("load"),
    RELAY_30("30"),
    RELAY_85("85"),
    RELAY_86("86"),
    RELAY_87("87");

    private final String code;

    CavityRole(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
