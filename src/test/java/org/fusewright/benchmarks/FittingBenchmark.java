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
 * told the best cost as an upper bound): the first calls in a fresh virtual machine, and the state
 * that a service runs in, after seconds of calls. What is proven, and what the search allocates, is
 * printed beside.
 */
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "--enable-native-access=ALL-UNNAMED")
public class FittingBenchmark {

    /** The solver's own measure of its limit, some seconds. */
    private static final double EFFORT = 60;

    @State(Scope.Benchmark)
    public static class Asked {

        @Param({"12", "30", "60", "120", "400"})
        int items;

        @Param({"1", "5"})
        int locations;

        /** Whether the blocks carry hardly more than their items ask for. */
        @Param({"false", "true"})
        boolean tightCurrents;

        FittingTask task;

        @Setup
        public void draw() {
            task = FittingTasks.draw(items, locations, tightCurrents);
        }

        @TearDown(Level.Trial)
        public void tellProofAndMemory() {
            ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
            long before = threads.getCurrentThreadAllocatedBytes();
            Arrangement again = Fitter.fit(task);
            long allocated = threads.getCurrentThreadAllocatedBytes() - before;
            System.out.printf(
                    "search: proven %b, cost %d, bound %d, %.2f MB allocated%n",
                    again.optimal(), again.costMicros(), again.lowerBoundMicros(), allocated / 1e6);
        }
    }

    /** With a cost that can be had, and the solver loaded. */
    @State(Scope.Benchmark)
    public static class Solver {
        private Arrangement known;
        private Judge.Verdict verdict;

        @Setup
        public void load(Asked asked) {
            Judge.load();
            known = Fitter.fit(asked.task);
        }

        Judge.Verdict solve(Asked asked) {
            verdict = Judge.judge(asked.task, known, EFFORT);
            return verdict;
        }

        @TearDown(Level.Trial)
        public void tellProof() {
            System.out.printf(
                    "solver: proven %b, cost %d%n", verdict.proven(), verdict.costMicros());
        }
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 0)
    @Measurement(iterations = 3)
    public Arrangement firstSearch(Asked asked) {
        return Fitter.fit(asked.task);
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 0)
    @Measurement(iterations = 3)
    public Judge.Verdict firstSolver(Asked asked, Solver solver) {
        return solver.solve(asked);
    }

    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 2, time = 3)
    @Measurement(iterations = 3, time = 2)
    public Arrangement warmSearch(Asked asked) {
        return Fitter.fit(asked.task);
    }

    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 2, time = 3)
    @Measurement(iterations = 3, time = 2)
    public Judge.Verdict warmSolver(Asked asked, Solver solver) {
        return solver.solve(asked);
    }
}
