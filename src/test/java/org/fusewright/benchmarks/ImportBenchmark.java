package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.Catalogs;
import org.openjdk.jmh.annotations.AuxCounters;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.postgresql.PGConnection;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

import tools.jackson.databind.json.JsonMapper;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * How long a catalog of 200,000 offers takes from its CSV files to being in force, beside
 * PostgreSQL's COPY of its {@code offers.csv} into a table with the same keys, references and
 * indexes on the same server: {@code newRatio} where all parts and offers are new, {@code
 * pricedRatio} where each price is another, {@code sameRatio} where nothing is; each is to be below
 * 3. {@code goneRatio} is the way back to the sample. Ratios of the medians of some rounds in turn,
 * behind one to warm up.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Fork(1)
public class ImportBenchmark {
    private static final String DATABASE = "fusewright_imports";
    private static final int OFFERS = 200_000;
    private static final int ROUNDS = Integer.getInteger("fusewright.rounds", 3);
    private static final List<String> BESIDE =
            List.of(
                    "create schema beside",
                    "create table beside.part (like part including all)",
                    "create table beside.supplier (like supplier including all)",
                    "create table beside.offer (like offer including all)",
                    "alter table beside.offer drop prices, add breaks text not null,"
                            + " add foreign key (part_number) references beside.part,"
                            + " add foreign key (supplier_code) references beside.supplier",
                    "insert into beside.part select * from part",
                    "insert into beside.supplier select * from supplier",
                    "analyze beside.part",
                    "analyze beside.supplier");
    private static final String COPY =
            "copy beside.offer (supplier_code, part_number, pack_size, currency, breaks,"
                    + " lead_time_days) from stdin (format csv, header)";

    @Param({"20000", "200000"})
    int parts;

    private ConfigurableApplicationContext service;
    private Catalogs catalogs;
    private HttpClient client;
    private byte[] offers;
    private HttpRequest sample;
    private HttpRequest many;
    private HttpRequest repriced;

    @Setup
    public void start() throws IOException, InterruptedException, SQLException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(TestDatabase.newOne(DATABASE))
                        .run("--server.port=0");
        catalogs = service.getBean(Catalogs.class);
        client = HttpClient.newHttpClient();
        String port = service.getEnvironment().getRequiredProperty("local.server.port");
        Map<String, byte[]> files = ManyParts.draw(parts, OFFERS / parts, 0);
        offers = files.get("offers.csv");
        sample = ManyParts.toImport(port, ManyParts.sample());
        many = ManyParts.toImport(port, files);
        repriced = ManyParts.toImport(port, ManyParts.draw(parts, OFFERS / parts, 1));
        nanosToImport(many);
        for (String command : BESIDE) {
            execute(command);
        }
        nanosToImport(sample);
    }

    @TearDown
    public void stop() {
        client.close();
        service.close();
    }

    @Benchmark
    public void inTurn(Times times) throws IOException, InterruptedException, SQLException {
        for (int round = 0; round <= ROUNDS; round++) {
            times.copy.add(nanosToCopy());
            times.allNew.add(nanosToImport(many));
            times.priced.add(nanosToImport(repriced));
            times.copy.add(nanosToCopy());
            times.same.add(nanosToImport(repriced));
            times.gone.add(nanosToImport(sample));
            if (round == 0) {
                times.forget();
            }
        }
    }

    private long nanosToImport(HttpRequest request) throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request, BodyHandlers.ofByteArray());
        String inForce = catalogs.current().version();
        long time = System.nanoTime() - start;
        if (answer.statusCode() != 200
                || !new JsonMapper()
                        .readTree(answer.body())
                        .at("/version")
                        .stringValue()
                        .equals(inForce)) {
            throw new IllegalStateException("answered " + new String(answer.body()));
        }
        return time;
    }

    private long nanosToCopy() throws IOException, SQLException {
        execute("truncate beside.offer");
        try (Connection connection = TestDatabase.connectTo(DATABASE)) {
            long start = System.nanoTime();
            connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyIn(COPY, new ByteArrayInputStream(offers));
            return System.nanoTime() - start;
        }
    }

    private static void execute(String command) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(DATABASE);
                Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }

    /** What each took, and the ratios. */
    @AuxCounters(AuxCounters.Type.EVENTS)
    @State(Scope.Thread)
    public static class Times {

        private final List<Long> copy = new ArrayList<>();
        private final List<Long> allNew = new ArrayList<>();
        private final List<Long> priced = new ArrayList<>();
        private final List<Long> same = new ArrayList<>();
        private final List<Long> gone = new ArrayList<>();

        private void forget() {
            List.of(copy, allNew, priced, same, gone).forEach(List::clear);
        }

        public double copySeconds() {
            return Percentile.median(copy) / 1e9;
        }

        public double newSeconds() {
            return Percentile.median(allNew) / 1e9;
        }

        public double newRatio() {
            return ratio(allNew);
        }

        public double pricedRatio() {
            return ratio(priced);
        }

        public double sameRatio() {
            return ratio(same);
        }

        public double goneRatio() {
            return ratio(gone);
        }

        private double ratio(List<Long> times) {
            return (double) Percentile.median(times) / Percentile.median(copy);
        }
    }
}
