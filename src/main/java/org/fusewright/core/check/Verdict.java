package org.fusewright.core.check;

/** What a check concludes; ordered from good to bad. */
public enum Verdict {
    /** Inside its limit. */
    PASS("pass"),
    /** Buildable, but a person must agree. */
    CAUTION("caution"),
    /** Must not be built as it is. */
    FAIL("fail");

    private final String code;

    Verdict(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
