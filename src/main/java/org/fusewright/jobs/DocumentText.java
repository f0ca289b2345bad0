package org.fusewright.jobs;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import java.util.Comparator;
import java.util.List;

/**
 * Job documents as the database keeps them. It keeps no order of fields, so that is restored on
 * reading.
 */
final class DocumentText {
    /** The version of the job schema that documents are written in. */
    static final int SCHEMA_VERSION = 1;

    private static final JsonMapper MAPPER = new JsonMapper();

    /** All fields of a job, in the order that they have in their objects. */
    private static final List<String> ORDER =
            List.of(
                    "reference",
                    "id",
                    "name",
                    "title",
                    "customer",
                    "currency",
                    "supply",
                    "surroundings",
                    "feeds",
                    "circuits",
                    "locations",
                    "choices",
                    "nominalV",
                    "engineOffV",
                    "chargingV",
                    "batteryResistanceMilliohm",
                    "chargingOutputA",
                    "idleOutputA",
                    "ambientC",
                    "blockAmbientC",
                    "bundledLeads",
                    "terminal",
                    "lengthM",
                    "sourceDistanceM",
                    "diversity",
                    "fromFeedM",
                    "feed",
                    "location",
                    "essential",
                    "runM",
                    "returnPath",
                    "colour",
                    "devices",
                    "ratingA",
                    "gauge",
                    "maxDropPercent",
                    "relay",
                    "loads",
                    "triggerFrom",
                    "triggerM",
                    "groundM",
                    "contactFrom",
                    "kind",
                    "watts",
                    "amps",
                    "ratedV",
                    "count",
                    "inrush",
                    "multiple",
                    "ms",
                    "duty",
                    "branchM",
                    "place",
                    "block",
                    "part",
                    "position",
                    "fixed",
                    "wireFamily",
                    "arrangement",
                    "lockingWedge",
                    "plugEmptyCavities",
                    "sparePositions",
                    "spareFusesPerRating",
                    "slackPercent",
                    "endAllowanceMm",
                    "cutStepMm",
                    "pigtailMm",
                    "jumperMm");

    private DocumentText() {}

    static String print(JsonNode document) {
        return MAPPER.writeValueAsString(document);
    }

    static JsonNode parse(String text) {
        return ordered(MAPPER.readTree(text));
    }

    private static JsonNode ordered(JsonNode node) {
        if (node.isArray()) {
            ArrayNode array = JsonNodeFactory.instance.arrayNode();
            node.forEach(element -> array.add(ordered(element)));
            return array;
        }
        if (!node.isObject()) {
            return node;
        }
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        node.propertyNames().stream()
                .sorted(Comparator.comparingInt(ORDER::indexOf))
                .forEach(name -> object.set(name, ordered(node.get(name))));
        return object;
    }
}
