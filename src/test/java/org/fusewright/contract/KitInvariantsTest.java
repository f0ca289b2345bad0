package org.fusewright.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.jobs.web.KitDocument;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;

/**
 * The contract's invariants over generated jobs. A failing job is printed as a job file: save it,
 * and post it to {@code /api/kits} to see the same kit.
 */
class KitInvariantsTest {

    private static final int JOBS = 2_500;
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final Catalog CATALOG = CatalogFolder.read(Path.of("catalog-sample")).catalog();

    private final KitPlanner planner = KitPlanner.of(CATALOG);

    @Test
    void holdInTheKitOfEveryGeneratedJob() {
        List<String> failures =
                LongStream.range(0, JOBS)
                        .mapToObj(this::describeIfBroken)
                        .filter(text -> !text.isEmpty())
                        .limit(5)
                        .toList();

        if (!failures.isEmpty()) {
            fail(String.join("\n\n", failures));
        }
    }

    @Test
    void countBuildableAndUnbuildableJobsAmongTheGenerated() {
        long buildable =
                LongStream.range(0, 300)
                        .filter(
                                seed ->
                                        JSON.readTree(print(JobGenerator.generate(seed)))
                                                .get("buildable")
                                                .asBoolean())
                        .count();

        assertThat(buildable).as("both kinds must occur often").isBetween(30L, 290L);
    }

    @Test
    void countPlacesAndPicksOfEveryOutcomeAmongTheGenerated() {
        Map<String, Integer> outcomes = new TreeMap<>();
        for (long seed = 0; seed < 500; seed++) {
            ObjectNode job = JobGenerator.generate(seed);
            JsonNode kit = JSON.readTree(print(job));
            for (JsonNode check : kit.get("checks")) {
                if (check.get("code").asString().equals("place-kept")) {
                    outcomes.merge("place " + check.get("verdict").asString(), 1, Integer::sum);
                }
            }
            if (!kit.at("/fit/moved").isEmpty()) {
                outcomes.merge("moved", 1, Integer::sum);
            }
            String asked = job.at("/choices/arrangement").asString("cheapest");
            boolean built = kit.at("/fit/arrangement").asString().equals(asked);
            outcomes.merge(asked + (built ? "" : " impossible"), 1, Integer::sum);
        }
        assertThat(outcomes)
                .containsOnlyKeys(
                        "place pass",
                        "place fail",
                        "moved",
                        "cheapest",
                        "fewest-blocks",
                        "most-spare",
                        "coolest",
                        "one-block-type",
                        "one-block-type impossible");
    }

    private String describeIfBroken(long seed) {
        ObjectNode job = JobGenerator.generate(seed);
        List<String> broken = new ArrayList<>();
        try {
            byte[] printed = print(job);
            if (!Arrays.equals(printed, print(job))) {
                broken.add("the same job gave another document");
            }
            JsonNode kit = JSON.readTree(printed);
            broken.addAll(KitInvariants.listBroken(job, kit, CATALOG));
        } catch (MalformedJobException malformed) {
            broken.add("rejected: " + malformed.problems());
        } catch (RuntimeException thrown) {
            broken.add(thrown + " at " + Arrays.stream(thrown.getStackTrace()).limit(6).toList());
        }
        return broken.isEmpty()
                ? ""
                : "seed " + seed + ": " + String.join("; ", broken) + "\njob file: " + job;
    }

    private byte[] print(ObjectNode job) {
        JobReading reading = JobReader.read(job.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(reading.problems()).isEmpty();
        return KitDocument.print(planner.plan(reading.getJob()));
    }
}
