package org.fusewright.jobs.web;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.jobs.JobClash;
import org.fusewright.web.Words;

import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the buttons of a job's form do: add a row to a list or remove one, keep a device or relay at
 * a position of a block or let it move again, put a value where somebody else's stands.
 */
final class FormAction {
    private static final Pattern ADD =
            Pattern.compile("add (/feeds|/circuits|/locations|/circuits/\\d{1,4}/loads)");
    private static final Pattern REMOVE =
            Pattern.compile(
                    "remove (/feeds|/circuits|/locations|/circuits/\\d{1,4}/loads)/(\\d{1,4})");

    private static final String PLACED = "(/circuits/\\d{1,4}(?:/relay)?)";
    private static final Pattern PLACE =
            Pattern.compile("place " + PLACED + " (\\d{1,3}) (.{1,60})");
    private static final Pattern PUT = Pattern.compile("put (/\\S{1,100}) (.{1,20000})");
    private static final String AMOUNT = "/" + FormDocument.AMOUNT;
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Pattern FREE = Pattern.compile("free " + PLACED);

    private FormAction() {}

    /**
     * @throws MalformedJobException when there is no such button
     */
    static void apply(String action, ObjectNode document) {
        Matcher add = ADD.matcher(action);
        Matcher remove = REMOVE.matcher(action);
        Matcher place = PLACE.matcher(action);
        Matcher free = FREE.matcher(action);
        Matcher put = PUT.matcher(action);
        if (place.matches() && document.at(place.group(1)) instanceof ObjectNode holder) {
            holder.putObject("place")
                    .put("block", place.group(3))
                    .put("position", Integer.parseInt(place.group(2)))
                    .put("fixed", true);
        } else if (free.matches() && document.at(free.group(1)) instanceof ObjectNode holder) {
            holder.remove("place");
        } else if (put.matches()) {
            put(document, put.group(1), put.group(2));
        } else if (add.matches()) {
            add(document, add.group(1));
        } else if (remove.matches()
                && document.at(remove.group(1)) instanceof ArrayNode rows
                && Integer.parseInt(remove.group(2)) < rows.size()) {
            rows.remove(Integer.parseInt(remove.group(2)));
        } else {
            throw noSuchThing();
        }
    }

    private static MalformedJobException noSuchThing() {
        return new MalformedJobException(List.of(JobProblem.of("", "wrong.no-row")));
    }

    /** The button that puts a value where somebody else's stands, or brings a removed row back. */
    static String putting(JobClash clash) {
        return "put "
                + clash.pointer()
                + " "
                + (clash.value().isMissingNode()
                        ? "null"
                        : MAPPER.writeValueAsString(clash.value()));
    }

    private static void put(ObjectNode document, String pointer, String json) {
        JsonNode value = parsed(json);
        int cut = pointer.lastIndexOf('/');
        JsonNode holder = document.at(pointer.substring(0, cut));
        if (document.at(pointer) instanceof ArrayNode rows && value.isObject()) {
            rows.add(row(value));
        } else if (!(holder instanceof ObjectNode object)) {
            throw noSuchThing();
        } else if (pointer.endsWith(AMOUNT) && value.isObject()) {
            object.remove(List.of(FormDocument.WATTS, FormDocument.AMPS));
            object.setAll((ObjectNode) value);
        } else if (value.isNull()) {
            object.remove(pointer.substring(cut + 1));
        } else {
            object.set(pointer.substring(cut + 1), value);
        }
    }

    private static JsonNode parsed(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JacksonException notJson) {
            throw noSuchThing();
        }
    }

    /** A row whose loads say in one field what they draw. */
    private static JsonNode row(JsonNode fields) {
        nameAmount(fields);
        fields.path("loads").forEach(FormAction::nameAmount);
        return fields;
    }

    private static void nameAmount(JsonNode load) {
        if (load instanceof ObjectNode object
                && object.remove(FormDocument.AMOUNT) instanceof ObjectNode amount) {
            object.setAll(amount);
        }
    }

    private static void add(ObjectNode document, String list) {
        switch (list) {
            case "/feeds" ->
                    rows(document, list)
                            .addObject()
                            .put("id", freeName(document, list, "id", "feed-"))
                            .put("terminal", "15")
                            .put("lengthM", 0.6)
                            .put("sourceDistanceM", 0.15);
            case "/locations" ->
                    rows(document, list)
                            .addObject()
                            .put(
                                    "name",
                                    freeName(
                                            document,
                                            list,
                                            "name",
                                            Words.say("sheet.new-place") + " "))
                            .put("fromFeedM", 0);
            case "/circuits" -> addCircuit(document, rows(document, list));
            default -> addLoad(rows(document, list));
        }
    }

    private static void addCircuit(ObjectNode document, ArrayNode circuits) {
        ObjectNode circuit = circuits.addObject();
        circuit.put("id", freeName(document, "/circuits", "id", "circuit-"));
        circuit.put("feed", document.at("/feeds/0/id").asString(""));
        JsonNode location = document.at("/circuits/0/location");
        if (location.isString()) {
            circuit.set("location", location);
        }
        circuit.put("runM", 1);
        addLoad(circuit.putArray("loads"));
    }

    private static void addLoad(ArrayNode loads) {
        loads.addObject()
                .put("title", Words.say("sheet.new-load"))
                .put("kind", "resistive")
                .put("watts", 10);
    }

    private static ArrayNode rows(ObjectNode document, String list) {
        if (document.at(list) instanceof ArrayNode rows) {
            return rows;
        }
        int cut = list.lastIndexOf('/');
        if (document.at(list.substring(0, cut)) instanceof ObjectNode holder) {
            return holder.putArray(list.substring(cut + 1));
        }
        throw new MalformedJobException(List.of(JobProblem.of("", "wrong.no-list")));
    }

    private static String freeName(ObjectNode document, String list, String field, String start) {
        Set<String> taken = new HashSet<>();
        document.at(list).forEach(row -> taken.add(row.path(field).asString("")));
        int number = document.at(list).size();
        while (taken.contains(start + number)) {
            number++;
        }
        return start + number;
    }
}
