package org.fusewright.benchmarks;

import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.Fitter;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Width;
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
import org.openjdk.jmh.annotations.Warmup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;

/**
 * Time of one fitting: devices with a relay for every fourth, every third device a breaker that
 * needs the tall cap, three-, four- and eight-position blocks with either cap.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class FittingBenchmark {

    @Param({"4", "12", "40", "120"})
    int items;

    /** Whether the blocks carry less than their items could ask for. */
    @Param({"false", "true"})
    boolean tightCurrents;

    private FittingTask task;

    @Setup
    public void draw() {
        task = task(items, 2, tightCurrents);
    }

    @Benchmark
    public Arrangement fit() {
        return Fitter.fit(task);
    }

    private static FittingTask task(int count, int spare, boolean tight) {
        SplittableRandom random = new SplittableRandom(count);
        List<FittingItem> items = new ArrayList<>();
        while (items.size() < count) {
            String id = "c" + items.size();
            double currentA = (5 + random.nextInt(95)) / 10.0;
            double heightMm = random.nextInt(3) == 0 ? 28 : 16;
            items.add(item(id, Width.POSITION, heightMm, currentA, Optional.empty()));
            if (random.nextInt(4) == 0 && items.size() < count) {
                items.add(item(id + "r", Width.RELAY_PAIR, 16, currentA, Optional.of(id)));
            }
        }
        double perPositionA = tight ? 5.5 : 1_000;
        List<BlockForm> forms = new ArrayList<>();
        for (int positions : new int[] {3, 4, 8}) {
            forms.add(form(positions, false, perPositionA));
            forms.add(form(positions, true, perPositionA));
        }
        return new FittingTask(items, forms, spare);
    }

    private static FittingItem item(
            String id, Width width, double heightMm, double currentA, Optional<String> besides) {
        return new FittingItem(
                id, width, heightMm, currentA, "under seat", besides, Optional.empty());
    }

    private static BlockForm form(int positions, boolean tall, double perPositionA) {
        List<Integer> pairs =
                switch (positions) {
                    case 4 -> List.of(1, 3);
                    case 8 -> List.of(1, 3, 5, 7);
                    default -> List.of();
                };
        return new BlockForm(
                positions + "P",
                tall ? "tall" : "short",
                positions,
                pairs,
                tall ? 30 : 20,
                perPositionA * positions,
                30,
                5_250_000 + positions * 1_730_000L + (tall ? 1_900_000 : 0),
                180_000);
    }
}
