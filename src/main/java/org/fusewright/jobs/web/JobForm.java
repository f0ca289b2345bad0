package org.fusewright.jobs.web;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.words.Unit;
import org.fusewright.web.Typed;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A job document as a form shows it: the text of each field by its pointer, and what is wrong with
 * it.
 */
public final class JobForm {
    /** One choice of a list: what is sent, and what is shown. */
    public record Option(String value, String label) {}

    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Pattern CIRCUIT = Pattern.compile("/circuits/\\d{1,4}");

    /** What a circuit's drawer holds, by pointers within the circuit; its line has the rest. */
    private static final List<String> DRAWER =
            List.of(
                    "id",
                    "returnPath",
                    "colour",
                    "maxDropPercent",
                    "devices",
                    "ratingA",
                    "gauge",
                    "relay/triggerFrom",
                    "relay/triggerM",
                    "relay/groundM",
                    "relay/contactFrom",
                    "essential",
                    "place/block",
                    "place/part",
                    "place/position",
                    "place/fixed",
                    "relay/place/block",
                    "relay/place/part",
                    "relay/place/position",
                    "relay/place/fixed");

    private static final List<String> DRAWER_OF_LOAD =
            List.of("ratedV", "duty", "inrush/multiple", "inrush/ms");
    private static final List<String> DRAWER_OF_FIRST_LOAD = List.of("title", "branchM");

    private final JsonNode document;
    private final JsonNode keptDocument;
    private final Map<String, String> faults = new LinkedHashMap<>();
    private final List<JobProblem> problems;

    private JobForm(JsonNode document, List<JobProblem> problems, JsonNode keptDocument) {
        this.document = document;
        this.keptDocument = keptDocument;
        this.problems = List.copyOf(problems);
        for (JobProblem problem : problems) {
            faults.merge(
                    field(problem.pointer()), Words.say(problem.detail()), (a, b) -> a + "; " + b);
        }
    }

    static JobForm of(JsonNode document, List<JobProblem> problems) {
        return new JobForm(document, problems, document);
    }

    /** A form whose document is not kept: it knows what is. */
    JobForm insteadOf(JsonNode kept) {
        return new JobForm(document, problems, kept);
    }

    /** What is kept of a field that says something else; null when it says what is kept. */
    public @Nullable String keptInstead(String field) {
        if (keptDocument == document) {
            return null;
        }
        String kept = text(keptDocument, field);
        return kept.equals(text(field)) ? null : kept;
    }

    /** The field of the form that a problem belongs beside. */
    private static String field(String pointer) {
        String loads = "(/circuits/\\d+/loads/\\d+)";
        return pointer.matches(loads)
                ? pointer + "/" + FormDocument.AMOUNT
                : pointer.replaceFirst(
                        loads + "/(" + FormDocument.WATTS + "|" + FormDocument.AMPS + ")$",
                        "$1/" + FormDocument.AMOUNT);
    }

    /** All problems, with the fields that they belong beside. */
    public List<JobProblem> problems() {
        return problems.stream()
                .map(problem -> new JobProblem(field(problem.pointer()), problem.detail()))
                .toList();
    }

    /** The names of all fields that have something wrong with them. */
    public Set<String> faultyFields() {
        return new LinkedHashSet<>(faults.keySet());
    }

    /** What is wrong with a field, in words; empty when nothing is. */
    public String fault(String field) {
        String own = faults.getOrDefault(field, "");
        // A list of device kinds is one field here, whichever of its elements is wrong.
        return field.endsWith("/devices")
                ? faults.entrySet().stream()
                        .filter(fault -> fault.getKey().startsWith(field + "/"))
                        .map(Map.Entry::getValue)
                        .reduce(own, (a, b) -> a.isEmpty() ? b : a)
                : own;
    }

    /** The id of a field's element. */
    public static String id(String field) {
        return "f" + field.replaceAll("[^A-Za-z0-9]", "-");
    }

    /** What the ids of a row's elements end in: "-circuits-0". */
    public static String suffix(String row) {
        return id(row).substring(1);
    }

    /** Whether anything is wrong in some fields of a row, given as patterns. */
    public boolean isFaulty(String row, List<String> fields) {
        String any = row + "/(" + String.join("|", fields) + ")(/.*)?";
        return faults.keySet().stream().anyMatch(field -> field.matches(any));
    }

    /** The number of a row, counted from 1. */
    public static int number(String row) {
        return Integer.parseInt(row.substring(row.lastIndexOf('/') + 1)) + 1;
    }

    /** What stands in a field. */
    public String text(String field) {
        return text(document, field);
    }

    private static String text(JsonNode document, String field) {
        if (field.endsWith("/" + FormDocument.AMOUNT)) {
            JsonNode load = holder(document, field);
            return plain(
                    load.has(FormDocument.AMPS)
                            ? load.get(FormDocument.AMPS)
                            : load.path(FormDocument.WATTS),
                    Unit.NONE);
        }
        if (field.endsWith("/" + FormDocument.UNIT)) {
            return holder(document, field).has(FormDocument.AMPS) ? "A" : "W";
        }
        return plain(document.at(field), FormDocument.unitOf(field));
    }

    private static JsonNode holder(JsonNode document, String field) {
        return document.at(field.substring(0, field.lastIndexOf('/')));
    }

    private static String plain(JsonNode value, Unit unit) {
        if (value.isArray()) {
            List<String> elements = new ArrayList<>();
            value.forEach(element -> elements.add(plain(element, unit)));
            return String.join(",", elements);
        }
        if (value.isMissingNode() || value.isNull()) {
            return "";
        }
        if (value.isString()) {
            return value.stringValue();
        }
        return value.isNumber()
                ? Typed.shown(value.decimalValue(), unit)
                : MAPPER.writeValueAsString(value);
    }

    /** The usual value of a field, for its hint. */
    public static String usual(String field, double value) {
        return Typed.shown(BigDecimal.valueOf(value), FormDocument.unitOf(field));
    }

    public boolean flag(String field, boolean otherwise) {
        String text = text(field);
        return text.isEmpty() ? otherwise : text.equals("true");
    }

    /** The names of a list's rows: "/feeds/0", "/feeds/1" and so on. */
    public List<String> rows(String list) {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < document.at(list).size(); i++) {
            rows.add(list + "/" + i);
        }
        return rows;
    }

    private List<String> drawer(String row) {
        List<String> fields = new ArrayList<>();
        DRAWER.forEach(name -> fields.add(row + "/" + name));
        for (String load : rows(row + "/loads")) {
            if (load.endsWith("/0")) {
                DRAWER_OF_FIRST_LOAD.forEach(name -> fields.add(load + "/" + name));
            }
            DRAWER_OF_LOAD.forEach(name -> fields.add(load + "/" + name));
        }
        return fields;
    }

    /** Whether a field stands in its circuit's drawer. */
    boolean isOfDrawer(String field) {
        String row = circuitOf(field);
        return !row.isEmpty() && drawer(row).contains(field);
    }

    /** The row of the circuit that a field belongs to; empty for one of no circuit. */
    static String circuitOf(String field) {
        Matcher circuit = CIRCUIT.matcher(field);
        return circuit.lookingAt() ? circuit.group() : "";
    }

    /** The fields of a circuit's drawer that say something, each with its text. */
    public List<Option> kept(String row) {
        return drawer(row).stream()
                .map(field -> new Option(field, text(field)))
                .filter(field -> !field.label().isEmpty())
                .toList();
    }

    /** The first feed of a terminal; the first of all when there is none. */
    public String feedOf(String terminal) {
        List<String> feeds = rows("/feeds");
        return feeds.stream()
                .filter(row -> text(row + "/terminal").equals(terminal))
                .findFirst()
                .or(() -> feeds.stream().findFirst())
                .map(row -> text(row + "/id"))
                .orElse("");
    }

    public List<Option> kindOptions(String field) {
        return withCurrent(field, kindOptions());
    }

    public List<Option> unitOptions(String field) {
        return withCurrent(field, options("W", "W", "A", "A"));
    }

    public List<Option> feedOptions(String field) {
        return withCurrent(field, rows("/feeds").stream().map(this::idOption).toList());
    }

    public List<Option> triggerOptions(String field) {
        List<Option> options = new ArrayList<>();
        options.add(new Option("", Words.say("sheet.no-relay")));
        options.add(new Option("controller", Words.say("sheet.engine-controller")));
        rows("/feeds").stream()
                .map(row -> text(row + "/id"))
                .map(id -> new Option(id, Words.say("sheet.feed-named", id)))
                .forEach(options::add);
        return withCurrent(field, options);
    }

    private Option idOption(String row) {
        String id = text(row + "/id");
        return new Option(id, id);
    }

    private List<Option> withCurrent(String field, List<Option> options) {
        String current = text(field);
        if (current.isEmpty()
                || options.stream().anyMatch(option -> option.value().equals(current))) {
            return options;
        }
        List<Option> all = new ArrayList<>(options);
        all.add(new Option(current, Words.say("sheet.not-there", current)));
        return all;
    }

    public static List<Option> kindOptions() {
        return Stream.of(LoadKind.values())
                .map(kind -> new Option(kind.code(), Words.say("load-kind." + kind.code())))
                .toList();
    }

    /** Every order of preference there is, after one for "nothing special". */
    public static List<Option> deviceOptions(String usual) {
        return Stream.concat(
                        Stream.of(new Option("", usual)),
                        Stream.of(
                                        "auto-reset,manual-reset,fuse",
                                        "auto-reset,fuse,manual-reset",
                                        "manual-reset,auto-reset,fuse",
                                        "manual-reset,fuse,auto-reset",
                                        "fuse,auto-reset,manual-reset",
                                        "fuse,manual-reset,auto-reset",
                                        "auto-reset,manual-reset",
                                        "auto-reset,fuse",
                                        "manual-reset,auto-reset",
                                        "manual-reset,fuse",
                                        "fuse,auto-reset",
                                        "fuse,manual-reset",
                                        "auto-reset",
                                        "manual-reset",
                                        "fuse")
                                .map(kinds -> new Option(kinds, inTurn(kinds))))
                .toList();
    }

    /** "auto-reset,fuse" in words. */
    public static String inTurn(String kinds) {
        String[] codes = kinds.split(",");
        String words = Words.say("device-kind." + codes[0]);
        for (int i = 1; i < codes.length; i++) {
            words = Words.say("sheet.then", words, Words.say("device-kind." + codes[i]));
        }
        return words;
    }

    public static List<Option> options(String... valuesAndLabels) {
        List<Option> options = new ArrayList<>();
        for (int i = 0; i < valuesAndLabels.length; i += 2) {
            options.add(new Option(valuesAndLabels[i], valuesAndLabels[i + 1]));
        }
        return options;
    }
}
