package org.fusewright.jobs.load;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * One JSON object being read. Whatever is wrong goes to the list of problems, and reading carries
 * on; an explicit {@code null} counts as left out. Close it to have fields that nobody asked for
 * reported.
 */
public final class Fields implements AutoCloseable {
    private static final JsonNode MISSING = JsonNodeFactory.instance.missingNode();

    private final JsonNode node;
    private final String pointer;
    private final List<JobProblem> problems;
    private final List<String> asked = new ArrayList<>(16);

    private Fields(JsonNode node, String pointer, List<JobProblem> problems) {
        this.node = node;
        this.pointer = pointer;
        this.problems = problems;
    }

    /** Anything but an object is reported, and read as an object without fields. */
    public static Fields of(JsonNode node, String pointer, List<JobProblem> problems) {
        if (!node.isObject()) {
            problems.add(JobProblem.of(pointer, "wrong.not-an-object", name(node)));
        }
        return new Fields(node, pointer, problems);
    }

    static String below(String pointer, String name) {
        return pointer + "/" + name.replace("~", "~0").replace("/", "~1");
    }

    String pointer() {
        return pointer;
    }

    boolean isObject() {
        return node.isObject();
    }

    public boolean has(String name) {
        return find(name) != null;
    }

    public void report(String name, Text detail) {
        problems.add(new JobProblem(below(pointer, name), detail));
    }

    /** With a text of the bundle; see {@link Phrase}. */
    public void report(String name, String key, Object... values) {
        report(name, Phrase.of(key, values));
    }

    void reportHere(String key) {
        problems.add(JobProblem.of(pointer, key));
    }

    public Optional<String> findText(String name, TextForm form) {
        @Nullable String text = findString(name, form.words());
        if (text != null && !form.allows(text)) {
            report(name, "wrong.must-be", form.words());
        }
        return Optional.ofNullable(text);
    }

    /** When missing: reported, and {@code placeholder} to carry on with. */
    public String getText(String name, TextForm form, String placeholder) {
        Optional<String> text = findText(name, form);
        if (text.isEmpty()) {
            require(name, form.words());
        }
        return text.orElse(placeholder);
    }

    /** A text that {@code parse} makes a value of; {@code words} say which there are. */
    public <T> Optional<T> findParsed(
            String name, Function<String, Optional<T>> parse, Text words) {
        @Nullable String text = findString(name, words);
        if (text == null) {
            return Optional.empty();
        }
        Optional<T> value = parse.apply(text);
        if (value.isEmpty()) {
            report(name, "wrong.must-be-not", words, quoted(text));
        }
        return value;
    }

    public <T> T getParsed(
            String name, Function<String, Optional<T>> parse, Text words, T placeholder) {
        Optional<T> value = findParsed(name, parse, words);
        if (value.isEmpty()) {
            require(name, words);
        }
        return value.orElse(placeholder);
    }

    public OptionalDouble findNumber(String name, Range range) {
        @Nullable JsonNode value = find(name);
        if (value == null) {
            return OptionalDouble.empty();
        }
        @Nullable Text wrong = wrongWith(value, range);
        if (wrong != null) {
            report(name, wrong);
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(numberOf(value));
    }

    private static @Nullable Text wrongWith(JsonNode value, Range range) {
        if (!value.isNumber()) {
            return Phrase.of("wrong.must-be-not", range.words(), name(value));
        }
        double number = value.doubleValue();
        if (!Double.isFinite(number)) {
            return Phrase.of("wrong.not-finite", range.words());
        }
        return range.allows(number)
                ? null
                : Phrase.of("wrong.must-be-not", range.words(), value.toString());
    }

    private static double numberOf(JsonNode value) {
        // Adding zero turns -0.0 into 0.0.
        return value.doubleValue() + 0.0;
    }

    public double getNumber(String name, Range range) {
        OptionalDouble number = findNumber(name, range);
        if (number.isEmpty()) {
            require(name, range.words());
            return range.placeholder();
        }
        return number.getAsDouble();
    }

    public OptionalInt findWhole(String name, Range range) {
        OptionalDouble number = findNumber(name, range);
        return number.isPresent()
                ? OptionalInt.of((int) number.getAsDouble())
                : OptionalInt.empty();
    }

    OptionalDouble findOneOf(String name, double[] allowed) {
        @Nullable JsonNode value = find(name);
        if (value == null) {
            return OptionalDouble.empty();
        }
        if (value.isNumber()
                && DoubleStream.of(allowed).anyMatch(one -> one == value.doubleValue())) {
            return OptionalDouble.of(value.doubleValue());
        }
        String words =
                DoubleStream.of(allowed)
                        .mapToObj(one -> Long.toString((long) one))
                        .collect(Collectors.joining(", "));
        report(name, "wrong.must-be-not", Phrase.of("wrong.one-of", words), name(value));
        return OptionalDouble.empty();
    }

    public boolean findFlag(String name, boolean otherwise) {
        @Nullable JsonNode value = find(name);
        if (value == null) {
            return otherwise;
        }
        if (!value.isBoolean()) {
            report(name, "wrong.not-a-flag", name(value));
            return otherwise;
        }
        return value.booleanValue();
    }

    /** The object under a name; when left out, one without fields. */
    Fields open(String name) {
        @Nullable JsonNode value = find(name);
        return value == null
                ? new Fields(MISSING, below(pointer, name), problems)
                : of(value, below(pointer, name), problems);
    }

    /** Names fields that are read later, so that the list of allowed ones is in their order. */
    void ask(String... names) {
        for (String name : names) {
            noteAsked(name);
        }
    }

    /** Each element of a list; what is no list, or too long or short, is reported. */
    public <T> List<T> list(String name, Range length, Element<T> element) {
        @Nullable JsonNode value = find(name);
        if (value == null) {
            return List.of();
        }
        String at = below(pointer, name);
        if (!value.isArray()) {
            report(name, "wrong.not-a-list", name(value));
            return List.of();
        }
        if (!length.allows(value.size())) {
            report(name, "wrong.must-hold", length.span(), value.size());
        }
        List<T> values = new ArrayList<>();
        for (int i = 0; i < Math.min(value.size(), (int) length.max()); i++) {
            values.add(element.read(value.get(i), at + "/" + i));
        }
        return values;
    }

    /** A value that is read elsewhere; reported when missing. */
    Optional<JsonNode> find(String name, Text words) {
        require(name, words);
        return Optional.ofNullable(find(name));
    }

    /** A list of numbers; those that are not allowed are reported and left out. */
    List<Double> listNumbers(String name, Range length, Range range) {
        return list(name, length, (value, at) -> listed(value, at, range)).stream()
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Double> listed(JsonNode value, String at, Range range) {
        @Nullable Text wrong = wrongWith(value, range);
        if (wrong != null) {
            problems.add(new JobProblem(at, wrong));
            return Optional.empty();
        }
        return Optional.of(numberOf(value));
    }

    /** A list of texts that {@code parse} makes values of, by their pointers. */
    public <T> Map<String, T> listParsed(
            String name, Range length, Function<String, Optional<T>> parse, Text words) {
        Map<String, T> values = new LinkedHashMap<>();
        list(name, length, (value, at) -> parsed(value, at, parse, words))
                .forEach(found -> found.ifPresent(named -> values.put(named.at(), named.value())));
        return values;
    }

    private record Named<T>(String at, T value) {}

    private <T> Optional<Named<T>> parsed(
            JsonNode value, String at, Function<String, Optional<T>> parse, Text words) {
        Optional<T> parsed = value.isString() ? parse.apply(value.stringValue()) : Optional.empty();
        if (parsed.isEmpty()) {
            problems.add(JobProblem.of(at, "wrong.must-be-not", words, name(value)));
        }
        return parsed.map(found -> new Named<>(at, found));
    }

    public void require(String name, Text words) {
        if (find(name) == null && node.isObject()) {
            report(name, "wrong.missing", words);
        }
    }

    /** With a text of the bundle that says what to give. */
    public void require(String name, String key) {
        require(name, Phrase.of(key));
    }

    /** Reads one element of a list. */
    public interface Element<T> {
        T read(JsonNode node, String pointer);
    }

    @Override
    public void close() {
        if (!node.isObject()) {
            return;
        }
        for (String name : node.propertyNames()) {
            if (!asked.contains(name)) {
                report(name, "wrong.unknown-field", quoted(name), String.join(", ", asked));
            }
        }
    }

    private @Nullable String findString(String name, Text words) {
        @Nullable JsonNode value = find(name);
        if (value == null) {
            return null;
        }
        if (!value.isString()) {
            report(name, "wrong.must-be-not", words, name(value));
            return null;
        }
        return value.stringValue();
    }

    private @Nullable JsonNode find(String name) {
        noteAsked(name);
        @Nullable JsonNode value = node.get(name);
        return value == null || value.isNull() ? null : value;
    }

    private void noteAsked(String name) {
        if (!asked.contains(name)) {
            asked.add(name);
        }
    }

    static Text quoted(String text) {
        String shown =
                text.codePoints()
                        .limit(60)
                        .mapToObj(c -> Character.isISOControl(c) ? "?" : Character.toString(c))
                        .collect(Collectors.joining());
        return Phrase.of(
                "quoted", shown + (text.codePointCount(0, text.length()) > 60 ? "..." : ""));
    }

    static Text name(JsonNode value) {
        return switch (value.getNodeType()) {
            case OBJECT -> Phrase.of("json.object");
            case ARRAY -> Phrase.of("json.list");
            case STRING -> Phrase.of("json.text", quoted(value.stringValue()));
            case BOOLEAN -> Text.verbatim(value.booleanValue() ? "true" : "false");
            case NUMBER -> Phrase.of("json.number", value.toString());
            default -> Text.verbatim("null");
        };
    }
}
