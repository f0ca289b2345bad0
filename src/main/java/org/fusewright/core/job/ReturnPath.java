package org.fusewright.core.job;

import java.util.Optional;

/** How the current comes back from a load. */
public enum ReturnPath {
    /** Through the machine's frame; its resistance is neglected. */
    CHASSIS("chassis"),
    /** Through a wire as long and as thick as the way out. */
    WIRE("wire");

    private final String code;

    ReturnPath(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<ReturnPath> parse(String code) {
        for (ReturnPath path : values()) {
            if (path.code.equals(code)) {
                return Optional.of(path);
            }
        }
        return Optional.empty();
    }
}
