package org.fusewright.jobs.web;

import org.fusewright.core.words.Unit;
import org.fusewright.web.Typed;
import org.springframework.util.MultiValueMap;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The fields of a page's form as a job document. A field is named by its pointer into the document;
 * one left blank is left out. What is no number where one belongs stays as typed, for the reader to
 * complain about. Numbers are in the units that the form was shown in, with a decimal point or
 * comma, or in another unit that stands behind them.
 *
 * <p>Two fields of a load differ: "amount" with "unit" becomes watts or amps.
 */
final class FormDocument {
    /** In which units a form was shown. */
    static final String SHOWN_IN = "shownIn";

    static final String AMOUNT = "amount";
    static final String UNIT = "unit";
    static final String WATTS = "watts";
    static final String AMPS = "amps";

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final Pattern INDEX = Pattern.compile("\\d{1,4}");

    private static final Set<String> TEXTS =
            Set.of(
                    "reference",
                    "title",
                    "customer",
                    "currency",
                    "id",
                    "name",
                    "terminal",
                    "feed",
                    "location",
                    "returnPath",
                    "colour",
                    "triggerFrom",
                    "contactFrom",
                    "kind",
                    "duty",
                    "wireFamily",
                    "arrangement",
                    "block",
                    "part",
                    UNIT);
    private static final Set<String> FLAGS =
            Set.of("essential", "lockingWedge", "plugEmptyCavities", "fixed");
    private static final String DEVICES = "devices";
    private static final String GAUGE = "gauge";

    /** Lists that stand in every document, even empty. */
    private static final List<String> LISTS = List.of("feeds", "circuits");

    private FormDocument() {}

    /** The unit of a field by the end of its name: "runM" is in metres. */
    static Unit unitOf(String field) {
        return field.endsWith("Mm")
                ? Unit.MILLIMETRE
                : field.endsWith("M") ? Unit.METRE : field.endsWith("C") ? Unit.CELSIUS : Unit.NONE;
    }

    static ObjectNode of(MultiValueMap<String, String> fields) {
        Typed.in(fields.getOrDefault(SHOWN_IN, List.of("")).getLast());
        ObjectNode document = NODES.objectNode();
        LISTS.forEach(document::putArray);
        for (Map.Entry<String, List<String>> field : fields.entrySet()) {
            if (field.getKey().startsWith("/")) {
                // A check box comes second, after the field that stands for its being clear.
                set(document, field.getKey(), field.getValue().getLast());
            }
        }
        document.get("circuits").forEach(circuit -> finish((ObjectNode) circuit));
        return document;
    }

    /** A document with only some fields changed; one left blank is taken out. */
    static ObjectNode change(JsonNode base, MultiValueMap<String, String> fields) {
        Typed.in(fields.getOrDefault(SHOWN_IN, List.of("")).getLast());
        ObjectNode document = (ObjectNode) base.deepCopy();
        fields.keySet().stream()
                .filter(name -> name.endsWith("/" + AMOUNT) || name.endsWith("/" + UNIT))
                .map(name -> document.at(name.substring(0, name.lastIndexOf('/'))))
                .forEach(FormDocument::joinAmount);
        for (Map.Entry<String, List<String>> field : fields.entrySet()) {
            String text = field.getValue().getLast();
            if (field.getKey().startsWith("/") && text.isBlank()) {
                takeOut(document, field.getKey());
            } else if (field.getKey().startsWith("/")) {
                set(document, field.getKey(), text);
            }
        }
        document.path("circuits").forEach(circuit -> finish((ObjectNode) circuit));
        return document;
    }

    /** Undoes what {@link #nameAmount} does. */
    private static void joinAmount(JsonNode node) {
        if (node instanceof ObjectNode load && !load.has(AMOUNT)) {
            JsonNode amps = load.remove(AMPS);
            JsonNode watts = load.remove(WATTS);
            JsonNode amount = amps == null ? watts : amps;
            if (amount != null) {
                load.set(AMOUNT, amount);
            }
            load.put(UNIT, amps == null ? "W" : "A");
        }
    }

    private static void takeOut(ObjectNode document, String pointer) {
        int cut = pointer.lastIndexOf('/');
        JsonNode holder = document.at(pointer.substring(0, cut));
        if (!(holder instanceof ObjectNode object)) {
            return;
        }
        object.remove(pointer.substring(cut + 1));
        int above = pointer.lastIndexOf('/', cut - 1);
        if (object.isEmpty() && above >= 0 && document.at(pointer.substring(0, above)).isObject()) {
            ((ObjectNode) document.at(pointer.substring(0, above)))
                    .remove(pointer.substring(above + 1, cut));
        }
    }

    private static void set(ObjectNode document, String pointer, String text) {
        List<String> steps = List.of(pointer.substring(1).split("/", -1));
        Optional<JsonNode> holder = Optional.of(document);
        for (int i = 0; i + 1 < steps.size() && holder.isPresent(); i++) {
            boolean list = INDEX.matcher(steps.get(i + 1)).matches();
            holder = step(holder.get(), steps.get(i), list, text.isBlank());
        }
        if (holder.orElse(document) instanceof ObjectNode object
                && holder.isPresent()
                && !text.isBlank()) {
            object.set(steps.getLast(), value(steps.getLast(), text.strip()));
        }
    }

    /** The holder one step down, made when there is none; a blank field makes rows only. */
    private static Optional<JsonNode> step(
            JsonNode holder, String step, boolean list, boolean blank) {
        if (holder instanceof ArrayNode rows) {
            if (!INDEX.matcher(step).matches() || Integer.parseInt(step) > rows.size()) {
                return Optional.empty();
            }
            int index = Integer.parseInt(step);
            return Optional.of(index < rows.size() ? rows.get(index) : rows.addObject());
        }
        ObjectNode object = (ObjectNode) holder;
        if (object.has(step)) {
            return Optional.of(object.get(step)).filter(JsonNode::isContainer);
        }
        if (list) {
            return Optional.of(object.putArray(step));
        }
        return blank ? Optional.empty() : Optional.of(object.putObject(step));
    }

    private static JsonNode value(String name, String text) {
        if (name.equals(GAUGE)) {
            return NODES.stringNode(text.replace(',', '.'));
        }
        if (TEXTS.contains(name)) {
            return NODES.stringNode(text);
        }
        if (FLAGS.contains(name)) {
            return NODES.booleanNode(text.equals("true"));
        }
        if (name.equals(DEVICES)) {
            ArrayNode kinds = NODES.arrayNode();
            Stream.of(text.split(",")).forEach(kinds::add);
            return kinds;
        }
        Optional<BigDecimal> read = Typed.read(text, unitOf(name));
        if (read.isEmpty()) {
            return NODES.stringNode(text);
        }
        BigDecimal number = read.get().stripTrailingZeros();
        if (number.scale() > 0) {
            return NODES.numberNode(number.doubleValue());
        }
        return NODES.numberNode(number.longValueExact());
    }

    private static void finish(ObjectNode circuit) {
        dropEmptyPlace(circuit);
        dropEmptyPlace(circuit.path("relay"));
        JsonNode relay = circuit.get("relay");
        if (relay != null && !relay.has("triggerFrom")) {
            circuit.remove("relay");
        }
        if (circuit.get("loads") instanceof ArrayNode loads) {
            loads.forEach(load -> nameAmount((ObjectNode) load));
        }
    }

    /** A place without a block is a check box alone; one with something else is for the reader. */
    private static void dropEmptyPlace(JsonNode holder) {
        JsonNode place = holder.path("place");
        if (place.size() == 1 && place.has("fixed")) {
            ((ObjectNode) holder).remove("place");
        }
    }

    private static void nameAmount(ObjectNode load) {
        JsonNode unit = load.remove(UNIT);
        JsonNode amount = load.remove(AMOUNT);
        if (amount != null) {
            load.set(unit != null && unit.asString().equals("A") ? AMPS : WATTS, amount);
        }
    }
}
