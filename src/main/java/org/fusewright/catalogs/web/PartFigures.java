package org.fusewright.catalogs.web;

import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.jspecify.annotations.Nullable;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** What only one kind of part has, by the names of its record's components, units included. */
final class PartFigures {

    private PartFigures() {}

    static Map<String, @Nullable Object> of(Part part) {
        return components((Record) part);
    }

    private static Map<String, @Nullable Object> components(Record row) {
        Map<String, @Nullable Object> figures = new LinkedHashMap<>();
        for (RecordComponent component : row.getClass().getRecordComponents()) {
            if (component.getType() != Item.class) {
                figures.put(component.getName(), plain(valueOf(component, row)));
            }
        }
        return figures;
    }

    private static Object valueOf(RecordComponent component, Record row) {
        try {
            return component.getAccessor().invoke(row);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** Numbers and text as they are; an end left open, infinity, is nothing. */
    private static @Nullable Object plain(Object value) {
        return switch (value) {
            case Double number when number.isInfinite() -> null;
            case OptionalDouble number -> number.isPresent() ? number.getAsDouble() : null;
            case DeviceKind kind -> kind.code();
            case BladeForm form -> form.code();
            case PartNumber atom -> atom.toString();
            case WireSize atom -> atom.toString();
            case WireColour atom -> atom.toString();
            case Record row -> onlyComponent(components(row));
            case Collection<?> items -> {
                List<@Nullable Object> list = new ArrayList<>();
                items.forEach(item -> list.add(plain(item)));
                yield list;
            }
            default -> value;
        };
    }

    /** A record that only wraps a list is shown as that list. */
    private static @Nullable Object onlyComponent(Map<String, @Nullable Object> components) {
        boolean wraps =
                components.size() == 1 && components.values().iterator().next() instanceof List;
        return wraps ? components.values().iterator().next() : components;
    }
}
