package org.fusewright.core.sizing;

/** What a lead is for. */
public enum LeadRole {
    /** From the source to the main device, and from there to the block or its splice. */
    FEED("feed"),
    /** From a feed's splice to one cavity. */
    PIGTAIL("pigtail"),
    /** From a device to its relay, or to the splice that shares it. */
    JUMPER("jumper"),
    /** From the block to the load, or to the splice before several. */
    TRUNK("trunk"),
    /** From that splice to one load. */
    BRANCH("branch"),
    /** Back from a load to ground. */
    RETURN("return"),
    /** To a relay's terminal 86. */
    TRIGGER("trigger"),
    /** From a relay's terminal 85 to ground. */
    GROUND("ground");

    private final String code;

    LeadRole(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
