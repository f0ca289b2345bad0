package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.HashMap;
import java.util.Map;

/**
 * Writes where a kit's devices and relays sit into the job, as places to keep as long as that costs
 * nothing. A place that the job fixes stays as it is.
 */
final class WiredPlaces {
    private WiredPlaces() {}

    static ObjectNode write(JsonNode document, Kit kit) {
        ObjectNode wired = (ObjectNode) document.deepCopy();
        Map<String, ObjectNode> circuits = new HashMap<>();
        wired.path("circuits")
                .forEach(node -> circuits.put(node.path("id").asString(""), (ObjectNode) node));
        for (KitBlock block : kit.blocks()) {
            for (KitBlock.Seat seat : block.seats()) {
                ObjectNode circuit = circuits.get(seat.circuit());
                ObjectNode holder =
                        seat.part() instanceof Relay ? (ObjectNode) circuit.get("relay") : circuit;
                JsonNode place = holder.path("place");
                boolean fixed = place.isObject() && place.path("fixed").asBoolean(true);
                if (!fixed) {
                    holder.putObject("place")
                            .put("block", block.id())
                            .put("part", block.block().number().value())
                            .put("position", seat.positions().getFirst())
                            .put("fixed", false);
                }
            }
        }
        return wired;
    }
}
