package org.fusewright.core.kit;

/** The groups of a parts list, in the order in which a bench works through them. */
public enum PartGroup {
    SET("set"),
    BLOCK("block"),
    CAP("cap"),
    WEDGE("wedge"),
    TERMINAL("terminal"),
    SEAL("seal"),
    PLUG("plug"),
    DEVICE("device"),
    RELAY("relay"),
    SPLICE("splice"),
    WIRE("wire"),
    HOLDER("holder"),
    SPARE("spare");

    private final String code;

    PartGroup(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
