package org.fusewright.counts;

/** How pieces were counted. */
public enum Way {
    TAPPED("tapped"),
    TYPED("typed"),
    SCANNED("scanned");

    private final String code;

    Way(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
