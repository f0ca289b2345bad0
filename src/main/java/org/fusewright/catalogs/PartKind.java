package org.fusewright.catalogs;

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

import java.util.Optional;
import java.util.stream.Stream;

/** The kinds of part by the words that files, pages and the API use for them. */
public enum PartKind {
    BLOCK("block", "Blocks", Block.class),
    CAP("cap", "Caps", Cap.class),
    WEDGE("wedge", "Locking wedges", Wedge.class),
    TERMINAL("terminal", "Terminals", Terminal.class),
    SEAL("seal", "Seals", Seal.class),
    PLUG("plug", "Plugs", Plug.class),
    DEVICE("device", "Devices", Device.class),
    RELAY("relay", "Relays", Relay.class),
    WIRE("wire", "Wire", Wire.class),
    SPLICE("splice", "Splices", Splice.class),
    HOLDER("holder", "Main-device holders", Holder.class),
    SET("set", "Bagged sets", BaggedSet.class);

    private final String code;
    private final String title;
    private final Class<? extends Part> type;

    PartKind(String code, String title, Class<? extends Part> type) {
        this.code = code;
        this.title = title;
        this.type = type;
    }

    public String code() {
        return code;
    }

    /** The kind's name in the plural, for headings. */
    public String title() {
        return title;
    }

    public Class<? extends Part> type() {
        return type;
    }

    public static Optional<PartKind> parse(String code) {
        return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
    }

    public static PartKind of(Part part) {
        return switch (part) {
            case Block _ -> BLOCK;
            case Cap _ -> CAP;
            case Wedge _ -> WEDGE;
            case Terminal _ -> TERMINAL;
            case Seal _ -> SEAL;
            case Plug _ -> PLUG;
            case Device _ -> DEVICE;
            case Relay _ -> RELAY;
            case Wire _ -> WIRE;
            case Splice _ -> SPLICE;
            case Holder _ -> HOLDER;
            case BaggedSet _ -> SET;
        };
    }
}
