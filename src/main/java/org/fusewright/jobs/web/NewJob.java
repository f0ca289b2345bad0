package org.fusewright.jobs.web;

import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import java.util.Optional;

/** The document that a new job starts as. */
final class NewJob {
    private NewJob() {}

    static ObjectNode usual() {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.putObject("supply").put("nominalV", 12);
        return document;
    }

    /**
     * With what the form gave, a permanent and a switched feed, and no circuits yet.
     *
     * @param wireFamily empty for the catalog's usual one
     */
    static ObjectNode of(ObjectNode given, Optional<String> wireFamily) {
        ArrayNode feeds = given.putArray("feeds");
        feed(feeds, "battery", "30");
        feed(feeds, "switched", "15");
        given.putArray("circuits");
        wireFamily.ifPresent(family -> given.putObject("choices").put("wireFamily", family));
        return given;
    }

    private static void feed(ArrayNode feeds, String id, String terminal) {
        feeds.addObject()
                .put("id", id)
                .put("terminal", terminal)
                .put("lengthM", 0.6)
                .put("sourceDistanceM", 0.15);
    }
}
