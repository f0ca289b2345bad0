package org.fusewright.changes.web;

import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What was before and after a change, field beside field. A document is taken apart into its
 * fields; a row of one that has an id is found again by it, wherever it stands.
 */
final class FieldLines {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final String ID = "id";

    private FieldLines() {}

    /**
     * One field.
     *
     * @param name the column, then the way into its document, parted by slashes
     * @param before empty when there was no such field, or it had no value
     */
    record Line(String name, Optional<String> before, Optional<String> after) {
        boolean differs() {
            return !before.equals(after);
        }
    }

    /** All fields of both, each once. */
    static List<Line> of(Optional<JsonNode> before, Optional<JsonNode> after) {
        Map<String, String> was = fields(before);
        Map<String, String> is = fields(after);
        Set<String> names = new LinkedHashSet<>(was.keySet());
        names.addAll(is.keySet());
        return names.stream()
                .map(
                        name ->
                                new Line(
                                        name,
                                        Optional.ofNullable(was.get(name)),
                                        Optional.ofNullable(is.get(name))))
                .toList();
    }

    private static Map<String, String> fields(Optional<JsonNode> row) {
        Map<String, String> fields = new LinkedHashMap<>();
        row.ifPresent(
                columns ->
                        columns.propertyNames()
                                .forEach(name -> add(fields, name, document(columns.get(name)))));
        return fields;
    }

    /** Some documents are kept as text, byte for byte. */
    private static JsonNode document(JsonNode column) {
        if (column.isString() && column.stringValue().startsWith("{")) {
            try {
                return MAPPER.readTree(column.stringValue());
            } catch (JacksonException plainText) {
                return column;
            }
        }
        return column;
    }

    private static void add(Map<String, String> fields, String name, JsonNode value) {
        if (value.isObject()) {
            value.propertyNames().forEach(each -> add(fields, name + "/" + each, value.get(each)));
        } else if (value.isArray()) {
            List<String> names = rowNames(value);
            for (int i = 0; i < value.size(); i++) {
                add(fields, name + "/" + names.get(i), value.get(i));
            }
        } else if (!value.isNull()) {
            fields.put(name, value.isString() ? value.stringValue() : value.toString());
        }
    }

    /** The ids of the rows when each has one of its own, else their places. */
    private static List<String> rowNames(JsonNode rows) {
        Set<String> ids = new LinkedHashSet<>();
        List<String> places = new ArrayList<>();
        for (JsonNode row : rows) {
            places.add(String.valueOf(places.size()));
            if (row.path(ID).isString()) {
                ids.add(row.path(ID).stringValue());
            }
        }
        return ids.size() == places.size() ? List.copyOf(ids) : places;
    }
}
