package org.fusewright.core.words;

/** The units in which a person reads lengths, temperatures, masses and forces. */
public enum UnitSystem {
    METRIC("metric"),
    IMPERIAL("imperial");

    private final String code;

    UnitSystem(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
