package org.fusewright.core.words;

import java.util.Optional;

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

    /** The units of a code such as "metric". */
    public static Optional<UnitSystem> find(String code) {
        for (UnitSystem units : values()) {
            if (units.code.equals(code)) {
                return Optional.of(units);
            }
        }
        return Optional.empty();
    }
}
