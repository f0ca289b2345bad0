package org.fusewright.counts.load;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.jspecify.annotations.Nullable;

import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;

/**
 * The fields of one JSON object. Whatever is wrong is collected and told at once; a field that
 * nobody asked for is wrong too.
 */
final class JsonFields {
    private static final JsonMapper MAPPER =
            JsonMapper.builder()
                    .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                    .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                    .build();
    private static final int LONGEST_NAME = 100;

    private final JsonNode node;
    private final String pointer;
    private final List<JobProblem> problems;
    private final Set<String> asked = new LinkedHashSet<>();

    private JsonFields(JsonNode node, String pointer, List<JobProblem> problems) {
        this.node = node;
        this.pointer = pointer;
        this.problems = problems;
        if (!node.isObject()) {
            problems.add(JobProblem.of(pointer, "wrong.no-object"));
        }
    }

    /**
     * @throws MalformedJobException when this is no JSON
     */
    static JsonFields of(byte[] json) {
        JsonNode root;
        try {
            root = MAPPER.readTree(json);
        } catch (JacksonException e) {
            throw new MalformedJobException(List.of(JobProblem.of("", "json.none")));
        }
        return new JsonFields(root, "", new ArrayList<>());
    }

    JsonFields object(String name) {
        return new JsonFields(find(name), pointer + "/" + name, problems);
    }

    boolean has(String name) {
        return !find(name).isMissingNode();
    }

    /** Every name in this object, each taken as asked for. */
    Set<String> names() {
        Set<String> names = new LinkedHashSet<>(node.propertyNames());
        asked.addAll(names);
        return names;
    }

    JsonNode tree(String name) {
        return find(name);
    }

    void report(String name, Text detail) {
        problems.add(new JobProblem(pointer + "/" + escaped(name), detail));
    }

    /** With a text of the bundle; see {@link Phrase}. */
    void report(String name, String key, Object... values) {
        report(name, Phrase.of(key, values));
    }

    /** A text of 1 to 100 signs; an empty one stands in for what is wrong. */
    String name(String field) {
        String text = text(field).strip();
        if (has(field)
                && node.get(field).isString()
                && (text.isEmpty() || text.length() > LONGEST_NAME)) {
            report(field, "wrong.name-length", LONGEST_NAME);
        } else if (text.chars().anyMatch(Character::isISOControl)) {
            report(field, "wrong.one-line");
        }
        return text;
    }

    String text(String field) {
        JsonNode value = find(field);
        if (value.isString()) {
            return value.stringValue();
        }
        report(field, value.isMissingNode() ? "wrong.missing-text" : "wrong.no-text");
        return "";
    }

    Optional<String> findText(String field) {
        return has(field) ? Optional.of(text(field)) : Optional.empty();
    }

    OptionalInt findWhole(String field, int least, int most) {
        OptionalDouble number = findNumber(field, least, most);
        if (number.isPresent() && number.getAsDouble() != Math.rint(number.getAsDouble())) {
            report(field, "wrong.whole-number", least, most);
            return OptionalInt.empty();
        }
        return number.isPresent()
                ? OptionalInt.of((int) number.getAsDouble())
                : OptionalInt.empty();
    }

    OptionalDouble findNumber(String field, double least, double most) {
        JsonNode value = find(field);
        if (value.isMissingNode()) {
            return OptionalDouble.empty();
        }
        double number = value.isNumber() ? value.doubleValue() : Double.NaN;
        if (!(number >= least && number <= most)) {
            report(field, "wrong.number", plain(least), plain(most));
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(number);
    }

    double number(String field, double least, double most) {
        if (!has(field)) {
            report(field, "wrong.missing-number", plain(least), plain(most));
        }
        return findNumber(field, least, most).orElse(least);
    }

    Optional<List<String>> findTexts(String field) {
        JsonNode value = find(field);
        if (value.isMissingNode()) {
            return Optional.empty();
        }
        List<String> texts = new ArrayList<>();
        if (!value.isArray()) {
            report(field, "wrong.no-texts");
            return Optional.of(texts);
        }
        for (int i = 0; i < value.size(); i++) {
            JsonNode element = value.get(i);
            if (element.isString()) {
                texts.add(element.stringValue());
            } else {
                report(field + "/" + i, "wrong.no-text");
            }
        }
        return Optional.of(texts);
    }

    /** Makes the result when nothing is wrong. */
    <T> T finish(Supplier<T> result) {
        reportUnasked();
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return result.get();
    }

    void reportUnasked() {
        for (String name : node.propertyNames()) {
            if (!asked.contains(name)) {
                report(name, "wrong.no-field", String.join(", ", asked));
            }
        }
    }

    /** An explicit null counts as left out. */
    private JsonNode find(String name) {
        asked.add(name);
        @Nullable JsonNode value = node.get(name);
        return value == null || value.isNull() ? node.path("\u0000") : value;
    }

    private static String escaped(String name) {
        return name.replace("~", "~0");
    }

    private static Amount plain(double value) {
        return new Amount(value, Unit.NONE, 6);
    }
}
