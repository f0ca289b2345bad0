package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.jobs.Jobs;
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
import org.openjdk.jmh.annotations.Warmup;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

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
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.IntSupplier;

/**
 * Pages and searches of 100,000 jobs, beside the plain statement that gives the same rows by an
 * index. The ratios printed, of the medians, are those of the service's call and of the whole
 * request; the highest of the calls is {@code highestRatio}, to be below 3.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 15)
@Measurement(iterations = 1, time = 30) // one: events of several would be added up
@Fork(1)
public class JobSearchBenchmark {
    private static final String DATABASE = "fusewright_job_searches";
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

    /** Nothing, in each job, in one of ten, of a hundred, of all, none. */
    private static final List<String> SOUGHT =
            List.of("", "touring", "scrambler", "hill 77", "b-012345", "nowhere");

    /** The first page, and the one in the middle. */
    private static final List<Integer> BEHIND = List.of(0, JOBS / 2);

    private ConfigurableApplicationContext service;
    private Jobs jobs;
    private JdbcTemplate jdbc;
    private HttpClient client;
    private String list;
    private long end;
    private boolean isPlainFirst;

    @Setup
    public void start() throws IOException, SQLException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(TestDatabase.newOne(DATABASE))
                        .run("--server.port=0");
        jobs = service.getBean(Jobs.class);
        jdbc = service.getBean(JdbcTemplate.class);
        client = HttpClient.newHttpClient();
        list =
                "http://127.0.0.1:"
                        + service.getEnvironment().getRequiredProperty("local.server.port")
                        + "/api/jobs?limit="
                        + PAGE;
        fill(Files.readString(Path.of("catalog-sample/jobs/06-touring-twelve.json")));
        end = jdbc.queryForObject("select max(id) + 1 from job", Long.class);
    }

    /** On a connection without the service's patience. */
    private static void fill(String document) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(DATABASE)) {
            JdbcTemplate filling =
                    new JdbcTemplate(new SingleConnectionDataSource(connection, true));
            filling.update(
                    """
                    insert into job (reference, title, customer, revision, version, document,
                                     schema_version, created_at, changed_at, changed_by)
                    select 'B-' || lpad(n::text, 6, '0'),
                           'Touring ' || (array['bobber', 'scrambler', 'sidecar', 'trike',
                                                'tracker', 'chopper', 'cafe', 'enduro', 'cruiser',
                                                'custom'])[1 + n % 10],
                           'Hill ' || n % 100, 1, 0, ?::jsonb, 1, now(), now(), 'shop'
                    from generate_series(1, ?) n
                    """,
                    document, JOBS);
            filling.execute("vacuum analyze job");
        }
    }

    @TearDown
    public void stop() {
        client.close();
        service.close();
    }

    /** One after the other, so that whatever else the machine does slows all alike. */
    @Benchmark
    public void inTurn(SearchTimes times) throws IOException, InterruptedException {
        isPlainFirst = !isPlainFirst;
        for (String sought : SOUGHT) {
            for (int behind : BEHIND) {
                ask(times, sought, end - behind);
            }
        }
    }

    private void ask(SearchTimes times, String sought, long before)
            throws IOException, InterruptedException {
        IntSupplier call = () -> jobs.list(sought, OptionalLong.of(before), PAGE).jobs().size();
        IntSupplier plain = () -> plain(sought, before).size();
        // What the first one finds cold the other one finds warm.
        Timed first = timed(isPlainFirst ? plain : call);
        Timed second = timed(isPlainFirst ? call : plain);
        Timed called = isPlainFirst ? second : first;
        Timed asked = isPlainFirst ? first : second;
        long start = System.nanoTime();
        HttpResponse<byte[]> answer =
                client.send(
                        HttpRequest.newBuilder(
                                        URI.create(
                                                list
                                                        + "&after="
                                                        + before
                                                        + "&q="
                                                        + URLEncoder.encode(
                                                                sought, StandardCharsets.UTF_8)))
                                .build(),
                        BodyHandlers.ofByteArray());
        long answered = System.nanoTime();
        if (called.found() != Math.min(asked.found(), PAGE) || answer.statusCode() != 200) {
            throw new IllegalStateException(
                    called.found() + " of " + asked.found() + ": " + answer.statusCode());
        }
        String name = (sought.isEmpty() ? "all" : sought) + (before == end ? "" : ", deep");
        times.add(name, called.nanos(), asked.nanos(), answered - start);
    }

    private record Timed(int found, long nanos) {}

    private static Timed timed(IntSupplier search) {
        long start = System.nanoTime();
        int found = search.getAsInt();
        return new Timed(found, System.nanoTime() - start);
    }

    private List<String> plain(String sought, long before) {
        return sought.isEmpty()
                ? jdbc.query(LIST, (row, n) -> row.getString("document"), before)
                : jdbc.query(SEARCH, (row, n) -> row.getString("document"), before, sought, sought);
    }
}
