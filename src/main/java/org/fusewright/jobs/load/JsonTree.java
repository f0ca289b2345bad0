package org.fusewright.jobs.load;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.List;

/**
 * A JSON document as a tree, with the names that it gives twice: of those the first value counts.
 */
public record JsonTree(JsonNode root, List<JobProblem> problems) {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    public JsonTree {
        problems = List.copyOf(problems);
    }

    /**
     * @throws MalformedJobException when this is no JSON, with line and column
     */
    public static JsonTree parse(byte[] json) {
        List<JobProblem> problems = new ArrayList<>();
        try (JsonParser parser = MAPPER.createParser(json)) {
            if (parser.nextToken() == null) {
                throw malformed(JobProblem.of("", "json.empty"));
            }
            JsonNode root = value(parser, problems);
            if (parser.nextToken() != null) {
                throw notJson(
                        parser.currentTokenLocation().getLineNr(),
                        parser.currentTokenLocation().getColumnNr(),
                        Phrase.of("json.trailing"));
            }
            return new JsonTree(root, problems);
        } catch (JacksonException e) {
            throw notJson(
                    e.getLocation() == null ? 1 : e.getLocation().getLineNr(),
                    e.getLocation() == null ? 1 : e.getLocation().getColumnNr(),
                    Text.verbatim(plain(e.getOriginalMessage())));
        }
    }

    /** The library's words without its remarks on where the text came from. */
    private static String plain(String message) {
        return message.lines()
                .findFirst()
                .orElse("unreadable")
                .replaceAll(" \\(start marker.*", "");
    }

    private static JsonNode value(JsonParser parser, List<JobProblem> problems) {
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(parser, problems);
            case START_ARRAY -> array(parser, problems);
            case VALUE_STRING -> NODES.stringNode(parser.getString());
            case VALUE_TRUE -> NODES.booleanNode(true);
            case VALUE_FALSE -> NODES.booleanNode(false);
            case VALUE_NULL -> NODES.nullNode();
            case VALUE_NUMBER_INT -> whole(parser);
            default -> NODES.numberNode(parser.getDoubleValue());
        };
    }

    private static JsonNode whole(JsonParser parser) {
        return parser.getNumberType() == JsonParser.NumberType.BIG_INTEGER
                ? NODES.numberNode(Double.parseDouble(parser.getString()))
                : NODES.numberNode(parser.getLongValue());
    }

    private static ObjectNode object(JsonParser parser, List<JobProblem> problems) {
        ObjectNode object = NODES.objectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            parser.nextToken();
            JsonNode value = value(parser, problems);
            @Nullable JsonNode first = object.replace(name, value);
            if (first != null) {
                object.set(name, first);
                String at = parser.streamReadContext().pathAsPointer().toString();
                problems.add(JobProblem.of(at, "json.given-twice"));
            }
        }
        return object;
    }

    private static ArrayNode array(JsonParser parser, List<JobProblem> problems) {
        ArrayNode array = NODES.arrayNode();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            array.add(value(parser, problems));
        }
        return array;
    }

    private static MalformedJobException notJson(int line, int column, Text why) {
        return malformed(JobProblem.of("", "json.not-valid", line, column, why));
    }

    private static MalformedJobException malformed(JobProblem problem) {
        return new MalformedJobException(List.of(problem));
    }
}
