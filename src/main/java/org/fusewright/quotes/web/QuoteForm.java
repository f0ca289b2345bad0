package org.fusewright.quotes.web;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.quote.TaxKind;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import java.math.BigInteger;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/**
 * The form of a draft: what it asks for, and what is wrong with that.
 *
 * @param wishes as they were entered
 * @param taxes the kinds of customer to choose from
 */
public record QuoteForm(JsonNode wishes, List<TaxKind> taxes, List<JobProblem> problems) {
    private static final List<String> WHOLE = List.of("kits", "validDays");
    private static final List<String> LISTS = List.of("terms", "notIncluded");

    public QuoteForm {
        taxes = List.copyOf(taxes);
        problems = List.copyOf(problems);
    }

    /** What a new quote starts from. */
    static ObjectNode usual(List<TaxKind> taxes) {
        ObjectNode wishes = JsonNodeFactory.instance.objectNode();
        wishes.put("kits", 1);
        wishes.putArray("variants").add(VariantKind.AS_ASKED.code());
        if (!taxes.isEmpty()) {
            wishes.put("customerKind", taxes.getFirst().code());
        }
        wishes.put("shipping", true).put("validDays", 30);
        wishes.putArray("terms");
        wishes.putArray("notIncluded").add(Words.say("quotes.fitting-not-included"));
        return wishes;
    }

    /** The wishes of a form that was sent; what is no number stays as it was typed. */
    static ObjectNode read(MultiValueMap<String, String> fields) {
        ObjectNode wishes = JsonNodeFactory.instance.objectNode();
        for (String name : WHOLE) {
            putNumber(wishes, name, first(fields, name));
        }
        ArrayNode variants = wishes.putArray("variants");
        fields.getOrDefault("variants", List.of()).forEach(variants::add);
        String kind = first(fields, "customerKind");
        if (!kind.isEmpty()) {
            wishes.put("customerKind", kind);
        }
        wishes.put("shipping", first(fields, "shipping").equals("true"));
        for (String name : LISTS) {
            ArrayNode lines = wishes.putArray(name);
            first(fields, name)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty())
                    .forEach(lines::add);
        }
        return wishes;
    }

    private static void putNumber(ObjectNode wishes, String name, String typed) {
        if (typed.matches("-?\\d{1,18}")) {
            wishes.put(name, new BigInteger(typed).longValueExact());
        } else if (!typed.isEmpty()) {
            wishes.put(name, typed);
        }
    }

    private static String first(MultiValueMap<String, String> fields, String name) {
        @Nullable String value = fields.getFirst(name);
        return value == null ? "" : value.strip();
    }

    public String text(String name) {
        JsonNode value = wishes.path(name);
        return value.isValueNode() && !value.isNull() ? value.asString() : "";
    }

    public boolean flag(String name) {
        return wishes.path(name).asBoolean(true);
    }

    public boolean offers(VariantKind kind) {
        return listed("variants").contains(kind.code());
    }

    /** A list of texts, one a line. */
    public String lines(String name) {
        return String.join("\n", listed(name));
    }

    private List<String> listed(String name) {
        return StreamSupport.stream(wishes.path(name).spliterator(), false)
                .map(JsonNode::asString)
                .collect(Collectors.toList());
    }
}
