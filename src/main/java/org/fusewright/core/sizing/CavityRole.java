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

    /** The role of a relay's terminal: "30", "85", "86" or "87". */
    public static CavityRole ofRelayTerminal(String terminal) {
        return switch (terminal) {
            case "30" -> RELAY_30;
            case "85" -> RELAY_85;
            case "86" -> RELAY_86;
            case "87" -> RELAY_87;
            default -> throw new IllegalArgumentException("no relay terminal " + terminal);
        };
    }
}
