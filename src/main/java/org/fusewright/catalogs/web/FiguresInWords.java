package org.fusewright.catalogs.web;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.catalog.TimeCurrent;
import org.fusewright.core.words.Unit;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The figures of a part for reading: "ratingA" 7.5 becomes "rating" "7.5 A". */
final class FiguresInWords {

    /** By the ends of component names, longer ones first: what the reader sees, or what it is. */
    private static final Map<String, Object> UNITS = new LinkedHashMap<>();

    static {
        UNITS.put("MilliohmPerM", "mΩ/m");
        UNITS.put("Milliohm", "mΩ");
        UNITS.put("Ohm", "Ω");
        UNITS.put("Mm2", "mm²");
        UNITS.put("Mm", Unit.MILLIMETRE);
        UNITS.put("A", "A");
        UNITS.put("V", "V");
        UNITS.put("C", Unit.CELSIUS);
    }

    /** Decimals of a measure in other units than its own. */
    private static final int DECIMALS = 2;

    private FiguresInWords() {}

    /** Labels and values in the order of the record; what is empty is left out. */
    static Map<String, String> of(Part part) {
        Map<String, String> figures = new LinkedHashMap<>();
        figures.put(Words.say("figure.mass"), measure(part.massG(), Unit.GRAM));
        for (RecordComponent component : part.getClass().getRecordComponents()) {
            if (component.getType() != Item.class) {
                String name = component.getName();
                String said = said(valueOf(component, part), unitOf(name));
                if (!said.isEmpty()) {
                    figures.put(label(name), said);
                }
            }
        }
        return figures;
    }

    private static Object valueOf(RecordComponent component, Part part) {
        try {
            return component.getAccessor().invoke(part);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static Object unitOf(String name) {
        String capital = capital(name);
        return UNITS.entrySet().stream()
                .filter(unit -> capital.endsWith(unit.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }

    private static String said(Object value, Object unit) {
        if (unit instanceof Unit measured) {
            return switch (value) {
                case Double number -> measure(number, measured);
                case OptionalDouble number when number.isPresent() ->
                        measure(number.getAsDouble(), measured);
                default -> "";
            };
        }
        String words = words(value);
        return words.isEmpty() || unit.equals("") ? words : words + " " + unit;
    }

    /** Exact as in the catalog, or else in the reader's units. */
    private static String measure(double value, Unit unit) {
        boolean own = unit.shown(1, Words.wording().units()) == 1;
        return (own ? number(value) : Figures.bare(value, unit, DECIMALS))
                + " "
                + Figures.sign(unit);
    }

    private static String label(String name) {
        return Words.say(
                "figure."
                        + name.replaceAll("(?<=[a-z0-9])(?=[A-Z])", "-").toLowerCase(Locale.ROOT));
    }

    private static String capital(String name) {
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    private static String words(Object value) {
        return switch (value) {
            case Double number -> number(number);
            case OptionalDouble number -> number.isPresent() ? number(number.getAsDouble()) : "";
            case DeviceKind kind -> Words.say("device-kind." + kind.code());
            case BladeForm form -> form.code();
            case TimeCurrent gates -> list(gates.gates());
            case TimeCurrent.Gate gate -> gate(gate);
            case Rerating rerating -> list(rerating.points());
            case Rerating.Point point ->
                    Words.say(
                            "figure.rerated",
                            number(point.factor()),
                            measure(point.celsius(), Unit.CELSIUS));
            case Block.RelayPair pair -> Words.say("figure.pair", pair.first(), pair.second());
            case Relay.Pinout pinout ->
                    String.join(
                            ", ",
                            pinout.firstA(),
                            pinout.firstB(),
                            pinout.secondA(),
                            pinout.secondB());
            case BaggedSet.Content content -> content.quantity() + " × " + content.part();
            case Collection<?> items -> list(items);
            default -> value.toString();
        };
    }

    private static String list(Collection<?> items) {
        return items.stream().map(FiguresInWords::words).collect(Collectors.joining("; "));
    }

    private static String gate(TimeCurrent.Gate gate) {
        String opens =
                Double.isInfinite(gate.maxS())
                        ? Words.say("figure.seconds-or-more", number(gate.minS()))
                        : Words.say("figure.seconds", number(gate.minS()), number(gate.maxS()));
        return number(gate.percent()) + " %: " + opens;
    }

    private static String number(double value) {
        return Figures.plain(BigDecimal.valueOf(value));
    }
}
