package org.fusewright.benchmarks;

import com.sun.management.ThreadMXBean;

import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.Fitter;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Judge;
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

import java.lang.management.ManagementFactory;
import java.util.concurrent.TimeUnit;

/**
 * One fitting, proven, by the search and by an independent solver (OR-Tools CP-SAT, one worker,
 * told the best cost as an upper bound); what the search allocates is printed beside.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "--enable-native-access=ALL-UNNAMED")
@Warmup(iterations = 5)
@Measurement(iterations = 5)
public class FittingBenchmark {

    /** The solver's own measure; a proof at 400 items at one location takes it longer. */
    private static final double EFFORT = 20;

    @Param({"12", "30", "60", "120", "400"})
    int items;

    @Param({"1", "5"})
    int locations;

    /** Whether the blocks carry hardly more than their items ask for. */
    @Param({"false", "true"})
    boolean tightCurrents;

    private FittingTask task;
    private Arrangement known;

    @Setup
    public void draw() {
        Judge.load();
        task = FittingTasks.draw(items, locations, tightCurrents);
        known = Fitter.fit(task);
    }

    @Benchmark
    public Arrangement search() {
        return Fitter.fit(task);
    }

    @Benchmark
    public Judge.Verdict solver() {
        return Judge.judge(task, known, EFFORT);
    }

    @TearDown(Level.Trial)
    public void tellProofAndMemory() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        Arrangement again = Fitter.fit(task);
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        System.out.printf(
                "search: proven %b, %d blocks, %.1f MB allocated%n",
                again.optimal(), again.blocks().size(), allocated / 1e6);
    }
}
