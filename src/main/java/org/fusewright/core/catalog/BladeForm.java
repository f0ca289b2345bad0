package org.fusewright.core.catalog;

import java.util.Optional;
import java.util.stream.Stream;

/** The blade footprint of a device (ISO 8820-3 types F, C and E). */
public enum BladeForm {
    /** Miniature blades: the footprint of a block's position. */
    MINI("mini"),
    /** Medium blades, in an in-line holder. */
    MEDIUM("medium"),
    /** High-current blades, in a main-fuse holder. */
    HIGH_CURRENT("high-current");

    private final String code;

    BladeForm(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<BladeForm> parse(String code) {
        return Stream.of(values()).filter(form -> form.code.equals(code)).findFirst();
    }
}
