package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * How many kits of twelve circuits one machine answers, its callers on the same machine. Each job
 * differs from the one before in its reference.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 10)
@Measurement(iterations = 3, time = 10)
@Threads(4)
@Fork(1)
public class KitsPerSecondBenchmark {
    private static final Path JOB = Path.of("catalog-sample/jobs/06-touring-twelve.json");
    private static final String REFERENCE = "\"reference\": \"";

    private ConfigurableApplicationContext service;
    private URI kits;
    private String job;

    @Setup
    public void start() throws IOException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(new TestDatabase())
                        .run("--server.port=0");
        kits =
                URI.create(
                        "http://127.0.0.1:%s/api/kits"
                                .formatted(
                                        service.getEnvironment()
                                                .getRequiredProperty("local.server.port")));
        job = Files.readString(JOB);
        if (!job.contains(REFERENCE)) {
            throw new IllegalStateException("the sample job has no reference to tell jobs apart");
        }
    }

    @TearDown
    public void stop() {
        service.close();
    }

    /** Somebody who asks for one kit after the other. */
    @State(Scope.Thread)
    public static class Caller {
        private final HttpClient client = HttpClient.newHttpClient();
        private int number;

        @TearDown
        public void leave() {
            client.close();
        }
    }

    @Benchmark
    public int kits(Caller caller) throws IOException, InterruptedException {
        String one = job.replace(REFERENCE, REFERENCE + caller.number++ + "-");
        HttpRequest request =
                HttpRequest.newBuilder(kits)
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(one))
                        .build();
        int status = caller.client.send(request, BodyHandlers.ofByteArray()).statusCode();
        if (status != 200) {
            throw new IllegalStateException("answered " + status);
        }
        return status;
    }
}
