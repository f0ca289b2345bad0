package org.fusewright.core.count;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;

import java.math.BigDecimal;

/**
 * What a part is drawn by, so that a person finds it on the bench.
 *
 * @param colour of the body in words, or a wire's IEC 60757 code; empty for none
 * @param mark what is written on it or tells it from its neighbours: "10", "30 A"; empty for none
 */
public record Likeness(CountedKind kind, String colour, String mark) {

    public static Likeness of(Part part) {
        CountedKind kind = CountedKind.of(part);
        return switch (part) {
            case Device device -> new Likeness(kind, colour(device), figure(device.ratingA()));
            case Relay relay -> new Likeness(kind, "", figure(relay.coilV()) + " V");
            case Block block -> new Likeness(kind, "", Integer.toString(block.positions()));
            case Seal seal ->
                    new Likeness(
                            kind,
                            "",
                            figure(seal.minOutsideMm()) + "–" + figure(seal.maxOutsideMm()));
            case Terminal terminal ->
                    new Likeness(
                            kind,
                            "",
                            figure(terminal.minAreaMm2()) + "–" + figure(terminal.maxAreaMm2()));
            case Wire wire -> new Likeness(kind, wire.colour().code(), wire.size().label());
            default -> new Likeness(kind, "", "");
        };
    }

    private static String colour(Device device) {
        return device.ratingColour().orElse(device.colour());
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
