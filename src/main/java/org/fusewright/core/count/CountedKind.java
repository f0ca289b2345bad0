package org.fusewright.core.count;

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

/**
 * What a piece looks like on the bench, and how much the masses of such pieces usually differ.
 *
 * <p>The relative scatters (one standard deviation, as a share of the mean) are common practice, no
 * published source: a weighing may state its own.
 */
public enum CountedKind {
    SET("set", 0.01),
    BLOCK("block", 0.005),
    CAP("cap", 0.005),
    WEDGE("wedge", 0.01),
    TERMINAL("terminal", 0.01),
    SEAL("seal", 0.03),
    PLUG("plug", 0.02),
    FUSE("fuse", 0.015),
    MANUAL_RESET("manual-reset", 0.02),
    AUTO_RESET("auto-reset", 0.02),
    RELAY("relay", 0.01),
    SPLICE("splice", 0.02),
    /** Cut leads: the scatter is that of a lead, of its length and of its mass a metre. */
    WIRE("wire", 0.02),
    HOLDER("holder", 0.01);

    private final String code;
    private final double usualScatter;

    CountedKind(String code, double usualScatter) {
        this.code = code;
        this.usualScatter = usualScatter;
    }

    public String code() {
        return code;
    }

    /** One standard deviation of a piece's mass as a share of the mean. */
    public double usualScatter() {
        return usualScatter;
    }

    public static Optional<CountedKind> parse(String code) {
        return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
    }

    public static CountedKind of(Part part) {
        return switch (part) {
            case BaggedSet _ -> SET;
            case Block _ -> BLOCK;
            case Cap _ -> CAP;
            case Wedge _ -> WEDGE;
            case Terminal _ -> TERMINAL;
            case Seal _ -> SEAL;
            case Plug _ -> PLUG;
            case Device device ->
                    switch (device.kind()) {
                        case FUSE -> FUSE;
                        case MANUAL_RESET -> MANUAL_RESET;
                        case AUTO_RESET -> AUTO_RESET;
                    };
            case Relay _ -> RELAY;
            case Splice _ -> SPLICE;
            case Wire _ -> WIRE;
            case Holder _ -> HOLDER;
        };
    }
}
