package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Timeout;
import org.openjdk.jmh.annotations.Warmup;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.RouterFunctions;
import org.springframework.web.servlet.function.ServerResponse;

import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Two hundred people, each editing a job of its own as the page does, every ten seconds on average;
 * beside them, in the same run, somebody who asks for one row of one table. Ten minutes, or {@code
 * -Dfusewright.crowd=60} seconds, after half a minute that does not count.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Timeout(time = 1, timeUnit = TimeUnit.HOURS)
@Fork(1)
public class CrowdBenchmark {
    private static final int PEOPLE = 200;
    private static final Duration COUNTED =
            Duration.ofSeconds(Integer.getInteger("fusewright.crowd", 600));
    private static final Duration WARM_UP = Duration.ofSeconds(30);
    private static final int MOST_PAUSE_MS = 20_000;
    private static final int READER_PAUSE_MS = 20;
    private static final Path JOB = Path.of("catalog-sample/jobs/06-touring-twelve.json");
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Pattern REVISION = Pattern.compile("name=\"from\" value=\"(\\d+)\"");
    private static final Pattern HELD = Pattern.compile("name=\"held\" value=\"([^\"]*)\"");

    private ConfigurableApplicationContext service;
    private HttpClient client;
    private String address;
    private final List<String> jobs = new ArrayList<>();

    @Configuration(proxyBeanMethods = false)
    static class OneRow {
        @Bean
        RouterFunction<ServerResponse> oneRow(JdbcClient database) {
            return RouterFunctions.route()
                    .GET(
                            "/one-row",
                            request ->
                                    ServerResponse.ok()
                                            .body(
                                                    database.sql(
                                                                    "select title from job where id"
                                                                            + " = 1")
                                                            .query(String.class)
                                                            .single()))
                    .build();
        }
    }

    @Setup
    public void open() throws IOException, InterruptedException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class, OneRow.class)
                        .initializers(TestDatabase.newOne("fusewright_crowd"))
                        .run("--server.port=0", "--spring.datasource.hikari.maximum-pool-size=10");
        client = HttpClient.newHttpClient();
        address =
                "http://127.0.0.1:"
                        + service.getEnvironment().getRequiredProperty("local.server.port");
        ObjectNode job = (ObjectNode) MAPPER.readTree(Files.readAllBytes(JOB));
        for (int i = 0; i < PEOPLE; i++) {
            job.put("reference", "CROWD-" + i);
            HttpResponse<String> made =
                    client.send(
                            HttpRequest.newBuilder(URI.create(address + "/api/jobs"))
                                    .header("Content-Type", "application/json")
                                    .POST(BodyPublishers.ofByteArray(MAPPER.writeValueAsBytes(job)))
                                    .build(),
                            BodyHandlers.ofString());
            String location = made.headers().firstValue("Location").orElseThrow();
            jobs.add("/jobs/" + location.substring(location.lastIndexOf('/') + 1));
        }
    }

    @TearDown
    public void close() {
        client.close();
        service.close();
    }

    @Benchmark
    public void edit(Times times) throws InterruptedException, ExecutionException {
        Instant begin = Instant.now().plus(WARM_UP);
        Instant end = begin.plus(COUNTED);
        List<Future<?>> people = new ArrayList<>();
        try (ExecutorService threads = Executors.newVirtualThreadPerTaskExecutor()) {
            for (int i = 0; i < PEOPLE; i++) {
                int person = i;
                people.add(threads.submit(() -> edit(person, begin, end, times)));
            }
            people.add(threads.submit(() -> read(begin, end, times)));
        }
        for (Future<?> person : people) {
            person.get();
        }
    }

    private Void edit(int person, Instant begin, Instant end, Times times)
            throws InterruptedException {
        Random random = new Random(person);
        String revision = "1";
        String held = "";
        while (Instant.now().isBefore(end)) {
            Thread.sleep(random.nextInt(MOST_PAUSE_MS));
            HttpRequest edit =
                    HttpRequest.newBuilder(URI.create(address + jobs.get(person)))
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .header("HX-Request", "true")
                            .timeout(Duration.ofSeconds(30))
                            .POST(
                                    BodyPublishers.ofString(
                                            "part=true&from=%s&held=%s&%%2Fcircuits%%2F%d%%2FrunM=%.2f"
                                                    .formatted(
                                                            revision,
                                                            held.replace(' ', '+'),
                                                            random.nextInt(12),
                                                            0.5 + random.nextInt(200) / 100.0)))
                            .build();
            Optional<String> answer = time(edit, begin, times.edits, times);
            if (answer.isPresent()) {
                revision = find(REVISION, answer.get());
                held = find(HELD, answer.get());
            }
        }
        return null;
    }

    private static String find(Pattern field, String answer) {
        Matcher found = field.matcher(answer);
        if (!found.find()) {
            throw new IllegalStateException("the answer has no " + field);
        }
        return found.group(1);
    }

    private Void read(Instant begin, Instant end, Times times) throws InterruptedException {
        HttpRequest row = HttpRequest.newBuilder(URI.create(address + "/one-row")).build();
        while (Instant.now().isBefore(end)) {
            Thread.sleep(READER_PAUSE_MS);
            time(row, begin, times.rows, times);
        }
        return null;
    }

    /** The answer, when it is one. */
    private Optional<String> time(
            HttpRequest request, Instant begin, Queue<Long> times, Times errors)
            throws InterruptedException {
        boolean counts = Instant.now().isAfter(begin);
        long start = System.nanoTime();
        try {
            HttpResponse<String> answer = client.send(request, BodyHandlers.ofString());
            if (answer.statusCode() == 200) {
                if (counts) {
                    times.add(System.nanoTime() - start);
                }
                return Optional.of(answer.body());
            }
        } catch (IOException broken) {
            // Counted as what it is, below.
        }
        errors.failed.incrementAndGet();
        return Optional.empty();
    }

    /** What came of it, in milliseconds. */
    @AuxCounters(AuxCounters.Type.EVENTS)
    @State(Scope.Thread)
    public static class Times {
        private final Queue<Long> edits = new ConcurrentLinkedQueue<>();
        private final Queue<Long> rows = new ConcurrentLinkedQueue<>();
        private final AtomicInteger failed = new AtomicInteger();

        public int editsInAll() {
            return edits.size();
        }

        public int errors() {
            return failed.get();
        }

        public double editP50() {
            return part(edits, 0.5);
        }

        public double editP99() {
            return part(edits, 0.99);
        }

        public double rowP50() {
            return part(rows, 0.5);
        }

        public double rowP99() {
            return part(rows, 0.99);
        }

        private static double part(Queue<Long> times, double share) {
            return times.stream()
                            .sorted()
                            .skip((long) (times.size() * share))
                            .findFirst()
                            .orElse(0L)
                    / (double) TimeUnit.MILLISECONDS.toNanos(1);
        }
    }
}
