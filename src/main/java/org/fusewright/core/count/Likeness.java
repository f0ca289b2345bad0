package org.fusewright.core.count;

import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/**
 * What a part is drawn by, so that a person finds it on the bench.
 *
 * @param colour of the body in words, or a wire's IEC 60757 code; empty for none
 * @param mark what is written on it or tells it from its neighbours: "10", "30 A"; empty for none
 */
public record Likeness(CountedKind kind, String colour, String mark) {

    /** Body colours of mini and medium blade fuses by rating (ISO 8820-3). */
    private static final Map<Double, String> BLADE_COLOURS =
            Map.ofEntries(
                    Map.entry(1.0, "black"),
                    Map.entry(2.0, "grey"),
                    Map.entry(3.0, "violet"),
                    Map.entry(4.0, "pink"),
                    Map.entry(5.0, "tan"),
                    Map.entry(7.5, "brown"),
                    Map.entry(10.0, "red"),
                    Map.entry(15.0, "blue"),
                    Map.entry(20.0, "yellow"),
                    Map.entry(25.0, "white"),
                    Map.entry(30.0, "green"),
                    Map.entry(40.0, "orange"));

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
        boolean byRating = device.form() != BladeForm.HIGH_CURRENT;
        return Optional.ofNullable(byRating ? BLADE_COLOURS.get(device.ratingA()) : null)
                .orElse(device.colour());
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
