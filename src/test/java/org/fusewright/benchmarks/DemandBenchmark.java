package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.StockLevel;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Offer.PriceBreak;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.orders.Orders;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
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

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * How long the demand over all accepted quotes takes (each with 20 parts, and 20,000 offers in the
 * catalog), beside a plain sum over the same rows; {@code inTurn:ratio}, of the medians, is to be
 * below 3.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 1, time = 5)
@Measurement(iterations = 1, time = 8) // one: events of several would be added up
@Fork(1)
public class DemandBenchmark {
    private static final int PARTS = 2_000;
    private static final int OFFERS = 10;
    private static final String PLAIN =
            "select part_number, sum(quantity) from quote_demand group by part_number";

    @Param({"1000", "10000", "100000"})
    int quotes;

    private ConfigurableApplicationContext service;
    private Orders orders;
    private JdbcTemplate jdbc;

    @Setup
    public void start() {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(new TestDatabase())
                        .run("--server.port=0");
        orders = service.getBean(Orders.class);
        jdbc = service.getBean(JdbcTemplate.class);
        fillCatalog(service.getBean(Catalogs.class));
        jdbc.update(
                """
                insert into quote (number, job_id, job_reference, title, customer, revision,
                                   version, created_at, changed_at)
                select 'B-' || n, n, 'B', 'B', 'B', 1, 0, now(), now()
                from generate_series(1, ?) n
                """,
                quotes);
        jdbc.update(
                """
                insert into quote_demand
                select q.id, 'P' || (q.job_id * 7 + k * 101) % 2000, 1 + (q.job_id + k) % 9
                from quote q, generate_series(0, 19) k where q.number like 'B-%'
                """);
        jdbc.execute("analyze quote_demand");
    }

    private static void fillCatalog(Catalogs catalogs) {
        List<Part> parts = new ArrayList<>();
        List<Offer> offers = new ArrayList<>();
        List<StockLevel> stock = new ArrayList<>();
        for (int p = 0; p < PARTS; p++) {
            PartNumber number = new PartNumber("P" + p);
            parts.add(new Plug(new Item(number, "Plug " + p, "Bench", 1), "F"));
            stock.add(new StockLevel(number, BigDecimal.TEN, BigDecimal.ONE));
            for (int o = 0; o < OFFERS; o++) {
                BigMoney price = BigMoney.of(CurrencyUnit.EUR, BigDecimal.valueOf(10 + o, 2));
                offers.add(new Offer("S" + o, number, 1, List.of(new PriceBreak(1, price)), 1));
            }
        }
        List<Supplier> suppliers = new ArrayList<>();
        for (int o = 0; o < OFFERS; o++) {
            suppliers.add(new Supplier("S" + o, "Supplier " + o, Optional.empty()));
        }
        catalogs.importCatalog(
                new CatalogContent(
                        Catalog.of("benchmark", parts, offers),
                        suppliers,
                        List.of(),
                        Optional.of(stock),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                catalogs.findContent().map(content -> content.catalog().version()));
    }

    @TearDown
    public void stop() {
        service.close();
    }

    /** One after the other, so that whatever else the machine does slows both alike. */
    @Benchmark
    public void inTurn(Times times) {
        long start = System.nanoTime();
        int parts = orders.listDemand(BigDecimal.TEN).size();
        long between = System.nanoTime();
        int rows = jdbc.query(PLAIN, (row, _) -> row.getBigDecimal(2)).size();
        times.plain.add(System.nanoTime() - between);
        times.demand.add(between - start);
        if (parts < rows || rows == 0) {
            throw new IllegalStateException(parts + " parts, but " + rows + " rows");
        }
    }

    /** What either took, and the ratio that should be below 3. */
    @AuxCounters(AuxCounters.Type.EVENTS)
    @State(Scope.Thread)
    public static class Times {

        private final List<Long> demand = new ArrayList<>();
        private final List<Long> plain = new ArrayList<>();

        @Setup(Level.Iteration)
        public void forget() {
            demand.clear();
            plain.clear();
        }

        public double demandMicros() {
            return Percentile.median(demand) / 1000.0;
        }

        public double plainMicros() {
            return Percentile.median(plain) / 1000.0;
        }

        public double ratio() {
            return (double) Percentile.median(demand) / Percentile.median(plain);
        }
    }
}
