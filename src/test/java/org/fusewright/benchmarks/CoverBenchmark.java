package org.fusewright.benchmarks;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Offer.PriceBreak;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.order.Cover;
import org.fusewright.core.order.CoverPlanner;
import org.fusewright.core.order.CoverTask;
import org.fusewright.core.order.Need;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
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

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * Time to the proven cheapest cover of so many parts, ten offers each, by eight suppliers with
 * minimum orders; 2,000 parts are to take less than 2 s.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Threads(1)
@Warmup(iterations = 1, time = 3)
@Measurement(iterations = 1, time = 5)
public class CoverBenchmark {

    private static final int OFFERS = 10;
    private static final int SUPPLIERS = 8;
    private static final int[] PACKS = {1, 1, 1, 5, 10, 25, 100};

    @Param({"100", "1000", "2000", "10000"})
    int parts;

    private CoverTask task;

    @Setup
    public void draw() {
        task = draw(parts, new Random(parts));
        if (!CoverPlanner.plan(task).isOptimal()) {
            throw new IllegalStateException("not proven");
        }
    }

    @Benchmark
    public Cover plan() {
        return CoverPlanner.plan(task);
    }

    private static CoverTask draw(int parts, Random random) {
        List<Need> needs = new ArrayList<>();
        List<Offer> offers = new ArrayList<>();
        for (int p = 0; p < parts; p++) {
            PartNumber part = new PartNumber("P" + p);
            needs.add(new Need(part, 1 + random.nextInt(1 + random.nextInt(300))));
            double usual = Math.exp(random.nextDouble() * 5 - 2.5);
            for (int o = 0; o < OFFERS; o++) {
                double price = usual * (0.85 + 0.3 * random.nextDouble());
                int pack = PACKS[random.nextInt(PACKS.length)];
                List<PriceBreak> breaks = breaks(price, random);
                offers.add(new Offer("S" + o % SUPPLIERS, part, pack, breaks, 1));
            }
        }
        Map<String, Money> minimums = new HashMap<>();
        for (int s = 0; s < SUPPLIERS; s++) {
            minimums.put("S" + s, Money.of(CurrencyUnit.EUR, 25 + random.nextInt(126)));
        }
        return new CoverTask(CurrencyUnit.EUR, needs, offers, minimums, OptionalInt.empty());
    }

    private static List<PriceBreak> breaks(double first, Random random) {
        List<PriceBreak> breaks = new ArrayList<>();
        int from = 1;
        double price = first;
        for (int b = 0; b < 1 + random.nextInt(4); b++) {
            BigDecimal amount = BigDecimal.valueOf(price).setScale(4, RoundingMode.HALF_UP);
            breaks.add(new PriceBreak(from, BigMoney.of(CurrencyUnit.EUR, amount)));
            from *= 2 + random.nextInt(9);
            price *= 0.88 + 0.1 * random.nextDouble();
        }
        return breaks;
    }
}
