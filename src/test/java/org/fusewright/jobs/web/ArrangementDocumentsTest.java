package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Places, reasons and arrangements as a kit's document tells them, on the sample catalog. */
class ArrangementDocumentsTest {

    private static final JsonMapper JSON = JsonMapper.shared();
    private static final KitPlanner PLANNER =
            KitPlanner.of(CatalogFolder.read(Path.of("catalog-sample")).catalog());

    private static ObjectNode job(int circuits, int relays) {
        ObjectNode job =
                (ObjectNode)
                        JSON.readTree(
                                """
                                {"reference": "A", "supply": {"nominalV": 12},
                                 "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                                            "sourceDistanceM": 0.15}],
                                 "circuits": [], "choices": {"devices": ["fuse"]}}
                                """);
        for (int i = 0; i < circuits; i++) {
            addCircuit(job, "c" + i, i < relays);
        }
        return job;
    }

    private static ObjectNode addCircuit(ObjectNode job, String id, boolean relay) {
        ObjectNode circuit = ((ArrayNode) job.get("circuits")).addObject();
        circuit.put("id", id).put("feed", "battery").put("runM", 1);
        if (relay) {
            circuit.putObject("relay")
                    .put("triggerFrom", "controller")
                    .put("triggerM", 0.5)
                    .put("groundM", 0.3);
        }
        circuit.putArray("loads").addObject().put("kind", "electronic").put("amps", 2);
        return circuit;
    }

    private static JsonNode kit(ObjectNode job) {
        return JSON.readTree(KitDocument.print(PLANNER.plan(JobReader.read(job).getJob())));
    }

    private static List<String> checks(JsonNode kit, String code) {
        List<String> verdicts = new ArrayList<>();
        kit.get("checks")
                .forEach(
                        check -> {
                            if (check.get("code").asString().equals(code)) {
                                verdicts.add(check.get("verdict").asString());
                            }
                        });
        return verdicts;
    }

    private static String place(JsonNode kit, String circuit, String what) {
        for (JsonNode block : kit.get("blocks")) {
            for (JsonNode seat : block.get("holds")) {
                if (seat.get("circuit").asString().equals(circuit) && seat.has(what)) {
                    return block.get("id").asString() + "-" + seat.at("/positions/0").asInt();
                }
            }
        }
        return "nowhere";
    }

    @Nested
    class Places {

        @Test
        void holdWhatTheJobFixes() {
            ObjectNode job = job(3, 1);
            circuit(job, 2).putObject("place").put("block", "left").put("position", 1);
            JsonNode kit = kit(job);
            assertThat(place(kit, "c2", "device")).isEqualTo("left-1");
            assertThat(checks(kit, "place-kept")).containsExactly("pass");
        }

        @Test
        void failAloudWhenTheyCannotBe() {
            ObjectNode job = job(2, 1);
            ((ObjectNode) circuit(job, 0).get("relay"))
                    .putObject("place")
                    .put("block", "left")
                    .put("part", "WDB-3")
                    .put("position", 1);
            JsonNode kit = kit(job);
            assertThat(checks(kit, "place-kept")).containsExactly("fail");
            assertThat(kit.get("buildable").asBoolean()).isFalse();
        }

        @Test
        void stayAfterAnEditOnceTheyAreWired() {
            ObjectNode job = job(6, 2);
            Kit kit = PLANNER.plan(JobReader.read(job).getJob());
            ObjectNode wired = WiredPlaces.write(job, kit);
            JsonNode before = kit(wired);
            assertThat(before.get("blocks")).isEqualTo(kit(job).get("blocks"));
            ObjectNode first = addCircuit(wired, "new", false);
            ArrayNode circuits = (ArrayNode) wired.get("circuits");
            circuits.remove(circuits.size() - 1);
            circuits.insert(0, first);
            JsonNode after = kit(wired);
            assertThat(after.at("/fit/moved")).isEmpty();
            for (int i = 0; i < 6; i++) {
                assertThat(place(after, "c" + i, "device"))
                        .isEqualTo(place(before, "c" + i, "device"));
            }
            assertThat(place(after, "new", "device")).isNotEqualTo("nowhere");
        }

        @Test
        void areSaidWhenTheyMove() {
            ObjectNode job = job(4, 0);
            for (int i = 0; i < 4; i++) {
                circuit(job, i)
                        .putObject("place")
                        .put("block", i < 2 ? "B1" : "B2")
                        .put("position", 1 + i % 2)
                        .put("fixed", false);
            }
            JsonNode moved = kit(job).at("/fit/moved");
            assertThat(moved).hasSize(2);
            assertThat(moved.get(0).get("from").asString()).startsWith("B");
            assertThat(moved.get(0).get("to").asString()).isNotEqualTo("no block");
        }

        private ObjectNode circuit(ObjectNode job, int index) {
            return (ObjectNode) job.get("circuits").get(index);
        }
    }

    @Nested
    class Why {

        @Test
        void saysWhatRejectsThreePositionBlocks() {
            String why = kit(job(1, 1)).at("/fit/why").toString();
            assertThat(why)
                    .contains("1 × WDB-4 with cap WDC-4-HIGH")
                    .contains("1 × WDB-3 with cap WDC-3-LOW would cost")
                    .contains("WDB-3 takes none");
        }

        @Test
        void saysTheSmallestChangeWhenNothingFits() {
            ObjectNode job = job(1, 0);
            ((ObjectNode) job.at("/circuits/0/loads/0")).put("amps", 45);
            JsonNode kit = kit(job);
            assertThat(kit.at("/fit/why").toString())
                    .contains("The device of c0 fits no stocked block")
                    .contains("over 2 circuits");
        }

        @Test
        void carriesItsProof() {
            JsonNode fit = kit(job(9, 3)).get("fit");
            assertThat(fit.get("optimal").asBoolean()).isTrue();
            assertThat(fit.get("cost")).isEqualTo(fit.get("lowerBound"));
        }
    }

    @Nested
    class Picked {

        @ParameterizedTest
        @ValueSource(
                strings = {"cheapest", "fewest-blocks", "most-spare", "coolest", "one-block-type"})
        void isBuilt(String kind) {
            ObjectNode job = job(9, 3);
            JsonNode offers =
                    JSON.readTree(
                                    ArrangementsDocument.print(
                                            PLANNER.listArrangements(JobReader.read(job).getJob())))
                            .get("arrangements");
            ((ObjectNode) job.get("choices")).put("arrangement", kind);
            JsonNode kit = kit(job);
            assertThat(kit.at("/fit/arrangement").asString()).isEqualTo(kind);
            boolean offered = false;
            for (JsonNode offer : offers) {
                if (offer.get("bestIn").toString().contains("\"" + kind + "\"")) {
                    offered = true;
                    assertThat(kit.at("/fit/cost").asDouble())
                            .isEqualTo(offer.get("cost").asDouble());
                    assertThat(kit.get("blocks")).hasSize(offer.get("blocks").size());
                }
            }
            assertThat(offered).isTrue();
            assertThat(offers.get(0).get("bestIn").get(0).asString()).isEqualTo("cheapest");
        }
    }
}
