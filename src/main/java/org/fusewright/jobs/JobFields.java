package org.fusewright.jobs;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.MissingNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A job document as the fields that people change, for comparing: what a load draws is one field,
 * "amount", in watts or amps; what is null is left out.
 */
final class JobFields {
    static final String AMOUNT = "amount";
    static final String LOADS = "loads";
    static final String CIRCUITS = "circuits";
    static final String PLACE = "place";
    static final String INRUSH = "inrush";
    static final String RELAY = "relay";

    /** What a load draws, in either of two units. */
    static final List<String> AMOUNTS = List.of("watts", "amps");

    /** Objects of which each field is changed by itself. */
    static final Set<String> GROUPS = Set.of("supply", "surroundings", "choices");

    /** What holds when a field says nothing. */
    private static final Map<String, JsonNode> USUAL =
            Map.of(
                    "essential", JsonNodeFactory.instance.booleanNode(false),
                    "lockingWedge", JsonNodeFactory.instance.booleanNode(true),
                    "plugEmptyCavities", JsonNodeFactory.instance.booleanNode(true),
                    "count", JsonNodeFactory.instance.numberNode(1));

    private JobFields() {}

    static ObjectNode of(JsonNode document) {
        JsonNode copy = withoutNulls(document);
        for (JsonNode circuit : copy.path(CIRCUITS)) {
            for (JsonNode load : circuit.path(LOADS)) {
                joinAmount(load);
            }
        }
        return copy instanceof ObjectNode object ? object : JsonNodeFactory.instance.objectNode();
    }

    /** Makes a document of its fields again, in place. */
    static ObjectNode toDocument(ObjectNode fields) {
        for (JsonNode circuit : fields.path(CIRCUITS)) {
            for (JsonNode load : circuit.path(LOADS)) {
                if (load instanceof ObjectNode object
                        && object.remove(AMOUNT) instanceof ObjectNode amount) {
                    object.setAll(amount);
                }
            }
        }
        return fields;
    }

    static JsonNode withoutNulls(JsonNode node) {
        if (node.isArray()) {
            ArrayNode array = JsonNodeFactory.instance.arrayNode();
            node.forEach(element -> array.add(withoutNulls(element)));
            return array;
        }
        if (!node.isObject()) {
            return node;
        }
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        node.properties().stream()
                .filter(field -> !field.getValue().isNull())
                .forEach(field -> object.set(field.getKey(), withoutNulls(field.getValue())));
        return object;
    }

    private static void joinAmount(JsonNode load) {
        if (load instanceof ObjectNode object) {
            ObjectNode amount = JsonNodeFactory.instance.objectNode();
            for (String unit : AMOUNTS) {
                JsonNode value = object.remove(unit);
                if (value != null) {
                    amount.set(unit, value);
                }
            }
            if (!amount.isEmpty()) {
                object.set(AMOUNT, amount);
            }
        }
    }

    /** Whether two values of a field mean the same; a missing one means the usual. */
    static boolean isSame(String name, JsonNode one, JsonNode other) {
        JsonNode a = meant(name, one);
        JsonNode b = meant(name, other);
        if (a.isNumber() && b.isNumber()) {
            return a.decimalValue().compareTo(b.decimalValue()) == 0;
        }
        if (a.isObject() && b.isObject()) {
            return names(List.of(a, b)).stream()
                    .allMatch(field -> isSame(field, a.path(field), b.path(field)));
        }
        if (a.isArray() && b.isArray() && a.size() == b.size()) {
            for (int i = 0; i < a.size(); i++) {
                if (!isSame("", a.get(i), b.get(i))) {
                    return false;
                }
            }
            return true;
        }
        return a.equals(b);
    }

    private static JsonNode meant(String name, JsonNode value) {
        return value.isMissingNode() ? USUAL.getOrDefault(name, MissingNode.getInstance()) : value;
    }

    /** The names of all fields that some objects have, in the order in which they come. */
    static Set<String> names(Collection<? extends JsonNode> objects) {
        Set<String> names = new LinkedHashSet<>();
        objects.forEach(object -> names.addAll(object.propertyNames()));
        return names;
    }

    /** The field that names the rows of a list; a load's title need not be its own. */
    static String keyOf(String list) {
        for (NamedList named : NamedList.values()) {
            if (named.field().equals(list)) {
                return named.key();
            }
        }
        return "title";
    }

    static boolean isList(String name) {
        return name.equals(LOADS) || List.of("feeds", CIRCUITS, "locations").contains(name);
    }
}
