package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.jobs.Jobs;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;

/**
 * How long a page of jobs takes among 100,000 of them: as the service finds it and as an answer of
 * {@code GET /api/jobs}, each beside the plain statement that gives the same rows by an index;
 * {@code inTurn:searchRatio} and {@code inTurn:answerRatio}, of the medians, are to be below 3.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 1, time = 5)
@Measurement(iterations = 1, time = 5) // one: events of several would be added up
@Fork(1)
public class JobSearchBenchmark {
    private static final int JOBS = 100_000;
    private static final int PAGE = 50;
    private static final String LIST =
            "select * from job where id < ? order by id desc limit " + (PAGE + 1);
    private static final String SEARCH =
            """
            select * from job
            where id < ? and letter_groups(job_said(reference, title, customer)) @> letter_groups(?)
              and job_said(reference, title, customer) like '%%' || ? || '%%'
            order by id desc limit %d
            """
                    .formatted(PAGE + 1);

    /** What is sought: nothing, in each job, in one of ten, of a hundred, of ten thousand, none. */
    @Param({"", "touring", "scrambler", "hill 77", "b-012345", "nowhere"})
    String sought;

    /** The first page, or the one after so many jobs. */
    @Param({"0", "50000"})
    int behind;

    private ConfigurableApplicationContext service;
    private Jobs jobs;
    private JdbcTemplate jdbc;
    private HttpClient client;
    private HttpRequest request;
    private long before;

    @Setup
    public void start() throws IOException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(new TestDatabase())
                        .run("--server.port=0");
        jobs = service.getBean(Jobs.class);
        jdbc = service.getBean(JdbcTemplate.class);
        client = HttpClient.newHttpClient();
        fill(Files.readString(Path.of("catalog-sample/jobs/06-touring-twelve.json")));
        before = jdbc.queryForObject("select max(id) + 1 from job", Long.class) - behind;
        request =
                HttpRequest.newBuilder(
                                URI.create(
                                        "http://127.0.0.1:%s/api/jobs?limit=%d&after=%d&q=%s"
                                                .formatted(
                                                        service.getEnvironment()
                                                                .getRequiredProperty(
                                                                        "local.server.port"),
                                                        PAGE,
                                                        before,
                                                        URLEncoder.encode(
                                                                sought, StandardCharsets.UTF_8))))
                        .build();
    }

    private void fill(String document) {
        jdbc.update(
                """
                insert into job (reference, title, customer, revision, version, document,
                                 schema_version, created_at, changed_at, changed_by)
                select 'B-' || lpad(n::text, 6, '0'),
                       'Touring ' || (array['bobber', 'scrambler', 'sidecar', 'trike', 'tracker',
                                            'chopper', 'cafe', 'enduro', 'cruiser', 'custom'])
                                     [1 + n % 10],
                       'Hill ' || n % 100, 1, 0, ?::jsonb, 1, now(), now(), 'shop'
                from generate_series(1, ?) n
                """,
                document, JOBS);
        jdbc.execute("analyze job");
    }

    @TearDown
    public void stop() {
        client.close();
        jdbc.update("delete from job where reference like 'B-%'");
        service.close();
    }

    /** One after the other, so that whatever else the machine does slows all alike. */
    @Benchmark
    public void inTurn(Times times) throws IOException, InterruptedException {
        long start = System.nanoTime();
        int rows = plain().size();
        long plain = System.nanoTime();
        int found = jobs.list(sought, OptionalLong.of(before), PAGE).jobs().size();
        long searched = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request, BodyHandlers.ofByteArray());
        long answered = System.nanoTime();
        if (found != Math.min(rows, PAGE) || answer.statusCode() != 200) {
            throw new IllegalStateException(found + " of " + rows + ": " + answer.statusCode());
        }
        times.plain.add(plain - start);
        times.search.add(searched - plain);
        times.answer.add(answered - searched);
    }

    private List<String> plain() {
        return sought.isEmpty()
                ? jdbc.query(LIST, (row, n) -> row.getString("document"), before)
                : jdbc.query(SEARCH, (row, n) -> row.getString("document"), before, sought, sought);
    }

    /** What each took, and the ratios that should be below 3. */
    @AuxCounters(AuxCounters.Type.EVENTS)
    @State(Scope.Thread)
    public static class Times {
        private final List<Long> plain = new ArrayList<>();
        private final List<Long> search = new ArrayList<>();
        private final List<Long> answer = new ArrayList<>();

        @Setup(Level.Iteration)
        public void forget() {
            plain.clear();
            search.clear();
            answer.clear();
        }

        public double plainMicros() {
            return Median.of(plain) / 1000.0;
        }

        public double searchRatio() {
            return (double) Median.of(search) / Median.of(plain);
        }

        public double answerRatio() {
            return (double) Median.of(answer) / Median.of(plain);
        }
    }
}
