package org.fusewright.core.quote;

/** What the lines of a quote are for, in the order in which they stand. */
public enum LineKind {
    PART("part"),
    LABOUR("labour"),
    SHIPPING("shipping");

    private final String code;

    LineKind(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
