package org.fusewright.jobs.web;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.text.Normalizer;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** The ids of circuits that nobody named: they follow the title. */
final class CircuitNames {
    private static final Pattern UNNAMED = Pattern.compile("circuit-\\d{1,4}");
    private static final int LONGEST = 30;

    private CircuitNames() {}

    /** Names circuits after the titles that they got; one that has a name of its own keeps it. */
    static void follow(JsonNode before, ObjectNode document) {
        JsonNode circuits = document.path("circuits");
        if (before.path("circuits").size() != circuits.size()) {
            return;
        }
        Set<String> ids = new HashSet<>();
        circuits.forEach(circuit -> ids.add(circuit.path("id").asString("")));
        for (int i = 0; i < circuits.size(); i++) {
            JsonNode old = before.at("/circuits/" + i);
            ObjectNode circuit = (ObjectNode) circuits.get(i);
            String id = circuit.path("id").asString("");
            String title = circuit.path("title").asString("");
            if (UNNAMED.matcher(id).matches()
                    && id.equals(old.path("id").asString(""))
                    && !title.equals(old.path("title").asString(""))) {
                String name = free(title, i, ids);
                circuit.put("id", name);
                ids.add(name);
            }
        }
    }

    /** An id from a title: "Fuel pump" makes "fuel-pump"; a number where it is taken. */
    static String free(String title, int row, Set<String> taken) {
        String plain = Normalizer.normalize(title, Normalizer.Form.NFD).toLowerCase(Locale.ROOT);
        String name =
                plain.replaceAll("\\p{M}+", "")
                        .replaceAll("[^a-z0-9]+", "-")
                        .replaceAll("^-+|-+$", "");
        String start = name.substring(0, Math.min(name.length(), LONGEST)).replaceFirst("-$", "");
        if (!start.isEmpty() && !taken.contains(start)) {
            return start;
        }
        int number = start.isEmpty() ? row + 1 : 2;
        String base = start.isEmpty() ? "circuit" : start;
        while (taken.contains(base + "-" + number)) {
            number++;
        }
        return base + "-" + number;
    }
}
