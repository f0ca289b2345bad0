package org.fusewright.jobs.load;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Changes job documents at random, often into something that is no job any more. */
public final class JobMutations {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** Texts at the edges of what texts, ids, colours, gauges and codes may be. */
    private static final List<String> TEXTS =
            List.of(
                    "",
                    " ",
                    "a",
                    "A-1_b.c",
                    "-a",
                    "a b",
                    "RD",
                    "RDBK",
                    "RDRD",
                    "RDB",
                    "rd",
                    "16 AWG",
                    "41 AWG",
                    "0 AWG",
                    "4/0 awg",
                    "5/0 AWG",
                    "12SAE",
                    "13 SAE",
                    "1/0 SAE",
                    "1.5 mm2",
                    "0.75mm²",
                    "0.0 mm2",
                    "000 mm2",
                    "1.5  mm2",
                    " 1.5 mm2",
                    "1.5 mm2 ",
                    "1.5",
                    "30",
                    "15",
                    "31",
                    "fuse",
                    "auto-reset",
                    "led",
                    "wire",
                    "chassis",
                    "momentary",
                    "EUR",
                    "USD",
                    "EU",
                    "eur",
                    "controller",
                    "a\u0007",
                    "a\nb",
                    "a\u202eb",
                    "a\u00a0",
                    "\ud83d\ude80",
                    "\ud83d",
                    "x".repeat(40),
                    "x".repeat(41),
                    "x".repeat(120),
                    "x".repeat(121),
                    "\ud83d\ude80".repeat(120),
                    "é");

    private static final double[] NUMBERS = {
        0, -0.0, 0.5, 1, 1.5, 2, 6, 12, 24, 50, 51, 60, 60.5, 100, 101, 150, 151, -60, -61, 500,
        501, 1000, 1001, 10_000, 20_000, 60_001, -1, 1e-9, 1e15
    };

    private JobMutations() {}

    /** Changes one thing somewhere in the document. */
    public static void mutate(JsonNode root, Random random) {
        List<JsonNode> holders = new ArrayList<>();
        collect(root, holders);
        JsonNode holder = holders.get(random.nextInt(holders.size()));
        if (holder instanceof ObjectNode object) {
            List<String> names = new ArrayList<>(object.propertyNames());
            String name = names.isEmpty() ? "extra" : names.get(random.nextInt(names.size()));
            switch (random.nextInt(6)) {
                case 0 -> object.remove(name);
                case 1 -> object.set("unknown" + random.nextInt(3), value(random));
                case 2 -> object.set(name, sameKind(object.get(name), random));
                case 3 -> object.set(name, NODES.nullNode());
                case 4 -> object.set(anyName(root, random), value(random));
                default -> object.set(name, value(random));
            }
        } else if (holder instanceof ArrayNode array) {
            switch (random.nextInt(3)) {
                case 0 -> array.add(value(random));
                case 1 -> array.removeAll();
                default -> {
                    if (!array.isEmpty()) {
                        array.add(array.get(random.nextInt(array.size())).deepCopy());
                    }
                }
            }
        }
    }

    private static void collect(JsonNode node, List<JsonNode> holders) {
        if (node.isContainer()) {
            holders.add(node);
            node.forEach(child -> collect(child, holders));
        }
    }

    private static String anyName(JsonNode root, Random random) {
        List<JsonNode> holders = new ArrayList<>();
        collect(root, holders);
        List<String> names =
                holders.stream().flatMap(node -> node.propertyNames().stream()).distinct().toList();
        return names.isEmpty() ? "extra" : names.get(random.nextInt(names.size()));
    }

    private static JsonNode sameKind(JsonNode value, Random random) {
        if (value == null) {
            return value(random);
        }
        return switch (value.getNodeType()) {
            case STRING -> text(random);
            case NUMBER -> number(random);
            case BOOLEAN -> NODES.booleanNode(random.nextBoolean());
            default -> value.deepCopy();
        };
    }

    private static JsonNode value(Random random) {
        return switch (random.nextInt(6)) {
            case 0 -> NODES.booleanNode(random.nextBoolean());
            case 1 -> NODES.objectNode();
            case 2 -> NODES.arrayNode();
            case 3 -> NODES.nullNode();
            case 4 -> number(random);
            default -> text(random);
        };
    }

    private static JsonNode text(Random random) {
        return NODES.stringNode(TEXTS.get(random.nextInt(TEXTS.size())));
    }

    private static JsonNode number(Random random) {
        double number = NUMBERS[random.nextInt(NUMBERS.length)];
        return random.nextBoolean() && number == Math.rint(number) && Math.abs(number) < 1e9
                ? NODES.numberNode((long) number)
                : NODES.numberNode(number);
    }
}
