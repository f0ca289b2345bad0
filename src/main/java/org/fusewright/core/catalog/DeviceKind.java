package org.fusewright.core.catalog;

import java.util.Optional;

/** How a protective device opens and comes back. */
public enum DeviceKind {
    /** Blade fuse: opens once. */
    FUSE("fuse"),
    /** Thermal breaker that a person resets (SAE J553 type 3). */
    MANUAL_RESET("manual-reset"),
    /** Solid-state breaker that comes back by itself when the fault is gone. */
    AUTO_RESET("auto-reset");

    private final String code;

    DeviceKind(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<DeviceKind> parse(String code) {
        for (DeviceKind kind : values()) {
            if (kind.code.equals(code)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }
}
