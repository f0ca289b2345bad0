package org.fusewright.jobs.web;

import org.fusewright.jobs.NamedList;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** When a feed, circuit or location gets another name in the form, what names it follows. */
final class Renaming {
    private Renaming() {}

    /** Whether anything has another name; what names it in {@code document} is changed then. */
    static boolean follow(JsonNode before, ObjectNode document) {
        boolean anything = false;
        for (NamedList named : NamedList.values()) {
            Map<String, String> renamed = renamed(before, document, named);
            anything |= !renamed.isEmpty();
            for (JsonNode circuit : document.path("circuits")) {
                for (String reference : named.references()) {
                    follow((ObjectNode) circuit, reference, renamed);
                }
            }
        }
        return anything;
    }

    private static void follow(ObjectNode circuit, String reference, Map<String, String> renamed) {
        String now = renamed.get(circuit.at(reference).asString(""));
        if (now == null) {
            return;
        }
        int cut = reference.lastIndexOf('/');
        ((ObjectNode) circuit.at(reference.substring(0, cut)))
                .put(reference.substring(cut + 1), now);
    }

    /** Old names to new ones; only rows that stayed where they were can be told. */
    private static Map<String, String> renamed(
            JsonNode before, ObjectNode document, NamedList named) {
        JsonNode old = before.path(named.field());
        JsonNode now = document.path(named.field());
        Map<String, String> renamed = new HashMap<>();
        if (old.size() != now.size()) {
            return renamed;
        }
        Set<String> stillThere = new HashSet<>();
        now.forEach(row -> stillThere.add(row.path(named.key()).asString("")));
        for (int i = 0; i < old.size(); i++) {
            String from = old.get(i).path(named.key()).asString("");
            String to = now.get(i).path(named.key()).asString("");
            if (!from.equals(to) && !to.isEmpty() && !stillThere.contains(from)) {
                renamed.put(from, to);
            }
        }
        return renamed;
    }
}
