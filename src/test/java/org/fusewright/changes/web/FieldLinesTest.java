package org.fusewright.changes.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.util.List;
import java.util.Optional;

class FieldLinesTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    /** Each line as "name: before > after", those that differ with a star. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                // a column, one without a value, one that is as before
                "{\"a\": 1, \"b\": null, \"c\": \"x\"} | {\"a\": 2, \"b\": \"y\", \"c\": \"x\"} |"
                        + " *a: 1 > 2; c: x > x; *b: - > y",
                // a row added, a row removed
                "- | {\"a\": true} | *a: - > true",
                "{\"a\": 0.5} | - | *a: 0.5 > -",
                // into a document; one kept as text
                "{\"d\": {\"e\": {\"f\": 1}}} | {\"d\": {\"e\": {\"f\": 1, \"g\": 2}}} |"
                        + " d/e/f: 1 > 1; *d/e/g: - > 2",
                "{\"d\": \"{\\\"e\\\": 1}\"} | {\"d\": \"{\\\"e\\\": 2}\"} | *d/e: 1 > 2",
                "{\"d\": \"{braced\"} | {\"d\": \"{braced}\"} | *d: {braced > {braced}",
                // rows by their ids, wherever they stand; by place where they have none
                "{\"r\": [{\"id\": \"p\", \"n\": 1}, {\"id\": \"q\", \"n\": 2}]} |"
                        + " {\"r\": [{\"id\": \"q\", \"n\": 2}, {\"id\": \"p\", \"n\": 3}]} |"
                        + " r/p/id: p > p; *r/p/n: 1 > 3; r/q/id: q > q; r/q/n: 2 > 2",
                "{\"r\": [{\"id\": \"p\"}, {\"id\": \"p\"}]} | {\"r\": [{\"id\": \"p\"}, 4]} |"
                        + " r/0/id: p > p; *r/1/id: p > -; *r/1: - > 4",
                "{\"r\": [1, 2]} | {\"r\": [1, 3]} | r/0: 1 > 1; *r/1: 2 > 3",
            })
    void setsFieldBesideFieldAndMarksWhatDiffers(String before, String after, String lines) {
        assertThat(print(FieldLines.of(row(before), row(after)))).isEqualTo(lines);
    }

    private static Optional<JsonNode> row(String text) {
        return text.equals("-") ? Optional.empty() : Optional.of(MAPPER.readTree(text));
    }

    private static String print(List<FieldLines.Line> lines) {
        return String.join(
                "; ",
                lines.stream()
                        .map(
                                line ->
                                        (line.differs() ? "*" : "")
                                                + line.name()
                                                + ": "
                                                + line.before().orElse("-")
                                                + " > "
                                                + line.after().orElse("-"))
                        .toList());
    }
}
