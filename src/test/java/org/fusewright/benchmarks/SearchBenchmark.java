package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.PartKind;
import org.fusewright.core.catalog.PartNumber;
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

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;

/**
 * Pages and searches of a catalog of 200,000 parts, beside SQL for the same answer over JDBC: the
 * primary key for pages, the same key's prefix for numbers, a GIN index of the words for words. The
 * ratios printed, of the medians, are those of the service's call and of the whole request; the
 * highest of the calls is {@code highestRatio}, to be below 3.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1, time = 10)
@Measurement(iterations = 1, time = 15) // one: events of several would be added up
@Fork(1)
public class SearchBenchmark {
    private static final String DATABASE = "fusewright_searches";
    private static final int PARTS = 200_000;
    private static final int PAGE = 51;
    private static final Set<PartKind> ALL = EnumSet.allOf(PartKind.class);
    private static final String COLUMNS =
            "select number, kind, title, brand, mass_g from part where ";
    private static final String WORDS =
            COLUMNS
                    + "to_tsvector('simple', title || ' ' || brand) @@ to_tsquery('simple', '%s')"
                    + " and number > ? order by number limit 51";

    private record Question(String words, String after, String sql) {}

    private static final Map<String, Question> QUESTIONS = questions();

    private static Map<String, Question> questions() {
        String page = COLUMNS + "number > ? order by number limit 51";
        Map<String, Question> all = new LinkedHashMap<>();
        all.put("first page", new Question("", "", page));
        all.put("deep page", new Question("", "BN-150000", page));
        all.put("common word", new Question("seal", "", WORDS.formatted("seal:*")));
        all.put("common word, deep", new Question("seal", "BN-150000", WORDS.formatted("seal:*")));
        all.put(
                "common words",
                new Question("black ribbed", "", WORDS.formatted("black:* & ribbed:*")));
        all.put(
                "rare words",
                new Question(
                        "violet tapered seal bellmoor",
                        "",
                        WORDS.formatted("violet:* & tapered:* & seal:* & bellmoor:*")));
        all.put(
                "start of a number",
                new Question(
                        "bn-00123",
                        "",
                        COLUMNS
                                + "number like 'BN-00123%' and number > ? order by number limit"
                                + " 51"));
        all.put("no such word", new Question("zzyzx", "", WORDS.formatted("zzyzx:*")));
        return all;
    }

    private ConfigurableApplicationContext service;
    private Catalogs catalogs;
    private JdbcTemplate jdbc;
    private HttpClient client;
    private String parts;

    @Setup
    public void start() throws IOException, InterruptedException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(TestDatabase.newOne(DATABASE))
                        .run("--server.port=0");
        catalogs = service.getBean(Catalogs.class);
        jdbc = service.getBean(JdbcTemplate.class);
        client = HttpClient.newHttpClient();
        String port = service.getEnvironment().getRequiredProperty("local.server.port");
        parts = "http://127.0.0.1:" + port + "/api/catalog/parts?limit=50&q=";
        send(ManyParts.toImport(port, ManyParts.draw(PARTS, 1, 0)));
        jdbc.execute(
                "create index on part using gin (to_tsvector('simple', title || ' ' || brand))");
        jdbc.execute("vacuum analyze part");
        long before = usedBytes();
        catalogs.listParts(ALL, "", Optional.empty(), 1);
        System.out.printf("search takes %d MB%n", (usedBytes() - before) >> 20);
        QUESTIONS.forEach(this::compare);
    }

    private static long usedBytes() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    /** Both must answer the same. */
    private void compare(String name, Question question) {
        List<String> found = ask(question).stream().map(PartNumber::value).toList();
        if (!found.equals(askPlainly(question))) {
            throw new IllegalStateException(name + ": " + found + " " + askPlainly(question));
        }
    }

    private List<PartNumber> ask(Question question) {
        return catalogs
                .listParts(
                        ALL,
                        question.words(),
                        Optional.of(question.after())
                                .filter(after -> !after.isEmpty())
                                .map(PartNumber::new),
                        PAGE)
                .stream()
                .map(part -> part.number())
                .toList();
    }

    private List<String> askPlainly(Question question) {
        return jdbc.query(question.sql(), (row, _) -> row.getString(1), question.after());
    }

    private void send(HttpRequest request) throws IOException, InterruptedException {
        HttpResponse<byte[]> answer = client.send(request, BodyHandlers.ofByteArray());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException("answered " + new String(answer.body()));
        }
    }

    private void request(Question question) throws IOException, InterruptedException {
        String query = URLEncoder.encode(question.words(), StandardCharsets.UTF_8);
        send(
                HttpRequest.newBuilder(URI.create(parts + query + "&after=" + question.after()))
                        .build());
    }

    @TearDown
    public void stop() {
        client.close();
        service.close();
    }

    /** One after the other, so that whatever else the machine does slows all alike. */
    @Benchmark
    public void inTurn(SearchTimes times) throws IOException, InterruptedException {
        for (var each : QUESTIONS.entrySet()) {
            long start = System.nanoTime();
            ask(each.getValue());
            long asked = System.nanoTime();
            askPlainly(each.getValue());
            long plainly = System.nanoTime();
            request(each.getValue());
            times.add(each.getKey(), asked - start, plainly - asked, System.nanoTime() - plainly);
        }
    }
}
