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

    /** By the ends of component names, longer ones first. */
    private static final Map<String, String> UNITS = new LinkedHashMap<>();

    static {
        UNITS.put("MilliohmPerM", "mΩ/m");
        UNITS.put("Milliohm", "mΩ");
        UNITS.put("Ohm", "Ω");
        UNITS.put("Mm2", "mm²");
        UNITS.put("Mm", "mm");
        UNITS.put("A", "A");
        UNITS.put("V", "V");
        UNITS.put("C", "°C");
    }

    private FiguresInWords() {}

    /** Labels and values in the order of the record; what is empty is left out. */
    static Map<String, String> of(Part part) {
        Map<String, String> figures = new LinkedHashMap<>();
        figures.put("mass", number(part.massG()) + " g");
        for (RecordComponent component : part.getClass().getRecordComponents()) {
            if (component.getType() != Item.class) {
                String name = component.getName();
                String value = words(valueOf(component, part));
                if (!value.isEmpty()) {
                    String unit = unitOf(name);
                    figures.put(label(name), unit.isEmpty() ? value : value + " " + unit);
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

    private static String unitOf(String name) {
        String capital = capital(name);
        return UNITS.entrySet().stream()
                .filter(unit -> capital.endsWith(unit.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }

    private static String label(String name) {
        String capital = capital(name);
        String bare =
                UNITS.keySet().stream()
                        .filter(capital::endsWith)
                        .map(end -> capital.substring(0, capital.length() - end.length()))
                        .findFirst()
                        .orElse(capital);
        return bare.isEmpty()
                ? "resistance"
                : bare.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }

    private static String capital(String name) {
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    private static String words(Object value) {
        return switch (value) {
            case Double number -> number(number);
            case OptionalDouble number -> number.isPresent() ? number(number.getAsDouble()) : "";
            case DeviceKind kind -> kind.code();
            case BladeForm form -> form.code();
            case TimeCurrent gates -> list(gates.gates());
            case TimeCurrent.Gate gate -> gate(gate);
            case Rerating rerating -> list(rerating.points());
            case Rerating.Point point ->
                    "× " + number(point.factor()) + " at " + number(point.celsius()) + " °C";
            case Block.RelayPair pair -> pair.first() + " and " + pair.second();
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
                        ? number(gate.minS()) + " s or more"
                        : number(gate.minS()) + " to " + number(gate.maxS()) + " s";
        return number(gate.percent()) + " %: " + opens;
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
