package org.fusewright.core.kit;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.catalog.Wire;

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

    /** The group of loose pieces of a part. */
    public static PartGroup of(Part part) {
        return switch (part) {
            case BaggedSet set -> SET;
            case Block block -> BLOCK;
            case Cap cap -> CAP;
            case Wedge wedge -> WEDGE;
            case Terminal terminal -> TERMINAL;
            case Seal seal -> SEAL;
            case Plug plug -> PLUG;
            case Device device -> DEVICE;
            case Relay relay -> RELAY;
            case Splice splice -> SPLICE;
            case Wire wire -> WIRE;
            case Holder holder -> HOLDER;
        };
    }
}
