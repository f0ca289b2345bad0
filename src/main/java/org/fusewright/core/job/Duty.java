package org.fusewright.core.job;

import java.util.Optional;

/** How long a load stays on. */
public enum Duty {
    CONTINUOUS("continuous"),
    /** At most two minutes at a time (AC 43.13-1B 11-68 d). */
    MOMENTARY("momentary");

    private final String code;

    Duty(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<Duty> parse(String code) {
        for (Duty duty : values()) {
            if (duty.code.equals(code)) {
                return Optional.of(duty);
            }
        }
        return Optional.empty();
    }
}
