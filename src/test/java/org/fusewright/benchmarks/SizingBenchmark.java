package org.fusewright.benchmarks;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobResolver;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.SizedJob;
import org.fusewright.core.sizing.Sizer;
import org.fusewright.jobs.load.JobReader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Time of one full sizing on one core: currents, devices, leads, heat, overload transients, shorts,
 * selectivity and checks. The job is the sample of twelve circuits; larger ones repeat its circuits
 * and feeds. Linear when the time for each circuit stays the same.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Threads(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 2)
public class SizingBenchmark {

    private static final int CIRCUITS_OF_SAMPLE = 12;

    @Param({"12", "24", "48", "96", "192", "396"})
    int circuits;

    private ResolvedJob job;

    @Setup
    public void read() throws IOException {
        byte[] sample = Files.readAllBytes(Path.of("catalog-sample/jobs/06-touring-twelve.json"));
        Job first = JobReader.read(sample).getJob();
        List<Feed> feeds = new ArrayList<>();
        List<Circuit> repeated = new ArrayList<>();
        for (int copy = 0; copy < circuits / CIRCUITS_OF_SAMPLE; copy++) {
            Job numbered = JobReader.read(numbered(sample, copy)).getJob();
            feeds.addAll(numbered.feeds());
            repeated.addAll(numbered.circuits());
        }
        Job whole =
                new Job(
                        first.reference(),
                        first.title(),
                        first.customer(),
                        first.currency(),
                        first.supply(),
                        first.surroundings(),
                        feeds,
                        repeated,
                        first.locations(),
                        first.choices());
        Catalog catalog = CatalogFolder.read(Path.of("catalog-sample")).catalog();
        job = JobResolver.resolve(whole, Stock.of(catalog, whole.currency()));
    }

    @Benchmark
    public SizedJob size() {
        return Sizer.size(job);
    }

    private static byte[] numbered(byte[] sample, int copy) {
        ObjectNode job = (ObjectNode) JsonMapper.shared().readTree(sample);
        for (JsonNode feed : job.withArray("feeds")) {
            number(feed, "id", copy);
        }
        for (JsonNode circuit : job.withArray("circuits")) {
            number(circuit, "id", copy);
            number(circuit, "feed", copy);
            JsonNode relay = circuit.path("relay");
            number(relay, "contactFrom", copy);
            if (!relay.path("triggerFrom").asString("controller").equals("controller")) {
                number(relay, "triggerFrom", copy);
            }
        }
        return JsonMapper.shared().writeValueAsBytes(job);
    }

    private static void number(JsonNode node, String field, int copy) {
        if (node.has(field)) {
            ((ObjectNode) node).put(field, node.get(field).asString() + "-" + copy);
        }
    }
}
