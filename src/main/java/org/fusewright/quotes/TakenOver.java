package org.fusewright.quotes;

import org.fusewright.core.quote.Variant;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.HashMap;
import java.util.Map;

/** A job's document that asks for the kinds of device of a variant, circuit by circuit. */
final class TakenOver {
    private TakenOver() {}

    static JsonNode into(JsonNode document, Variant variant) {
        Map<String, String> kinds = new HashMap<>();
        for (Variant.Protection protection : variant.protections()) {
            kinds.put(protection.circuit(), protection.kind());
        }
        JsonNode changed = document.deepCopy();
        for (JsonNode circuit : changed.path("circuits")) {
            String kind = kinds.get(circuit.path("id").asString(""));
            if (kind != null && circuit instanceof ObjectNode fields) {
                fields.putArray("devices").add(kind);
            }
        }
        return changed;
    }
}
