package org.fusewright.benchmarks;

import com.sun.management.ThreadMXBean;

import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.Fitter;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Judge;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * One fitting by the search and by an independent solver (OR-Tools CP-SAT, one worker, told the
 * best cost as an upper bound), one after the other in a fresh virtual machine: the first call of
 * each, and the median of the calls that follow. Each prints its row of the table; the score is
 * only what the whole row took. Where currents are tight the search is alone: the solver takes
 * minutes.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@Fork(value = 1, jvmArgsAppend = "--enable-native-access=ALL-UNNAMED")
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class FittingBenchmark {

    /** The solver's own measure of its limit, some seconds. */
    private static final double EFFORT = 40;

    /** Until the machine code of the search is settled. */
    private static final long WARM_UP_NANOS = 2_000_000_000L;

    private static final long MEASURED_NANOS = 1_000_000_000L;

    @Param({"12", "30", "60", "120", "400"})
    int items;

    @Param({"1", "5"})
    int locations;

    /** Whether the blocks carry hardly more than their items ask for. */
    @Param({"false", "true"})
    boolean tightCurrents;

    /**
     * @param firstMs the first call, or the only one
     * @param warmMs the median of the calls after the warm-up
     */
    private record Times<T>(T answer, double firstMs, double warmMs) {}

    @Benchmark
    public Arrangement row() {
        FittingTask task = FittingTasks.draw(items, locations, tightCurrents);
        Times<Arrangement> search = time(() -> Fitter.fit(task));
        Arrangement found = search.answer;
        String start =
                String.format(
                        Locale.ROOT,
                        "%n| %d | %d | %s | %s | %s | %.1f MB | %s |",
                        items,
                        locations,
                        tightCurrents ? "tight" : "ample",
                        ms(search.firstMs),
                        ms(search.warmMs),
                        allocatedMb(task),
                        found.optimal() ? "proven" : "open");
        System.out.println(tightCurrents ? start : start + besideSolver(task, search));
        return found;
    }

    private static String besideSolver(FittingTask task, Times<Arrangement> search) {
        Judge.load();
        Times<Judge.Verdict> solver = time(() -> Judge.judge(task, search.answer, EFFORT));
        boolean proven = solver.answer.proven();
        if (proven && solver.answer.costMicros() != search.answer.costMicros()) {
            throw new IllegalStateException("search and solver differ: " + solver.answer);
        }
        return String.format(
                Locale.ROOT,
                " %s | %s | %s | %.1f | %.1f |",
                ms(solver.firstMs),
                ms(solver.warmMs),
                proven ? "proven" : "open",
                solver.firstMs / search.firstMs,
                solver.warmMs / search.warmMs);
    }

    /** A call that takes longer than the warm-up is not repeated. */
    private static <T> Times<T> time(Supplier<T> call) {
        long started = System.nanoTime();
        T answer = call.get();
        long first = System.nanoTime() - started;
        double[] warm = {first};
        if (first < WARM_UP_NANOS) {
            while (System.nanoTime() - started < WARM_UP_NANOS) {
                call.get();
            }
            warm = measure(call);
        }
        Arrays.sort(warm);
        return new Times<>(answer, first / 1e6, warm[warm.length / 2] / 1e6);
    }

    private static <T> double[] measure(Supplier<T> call) {
        double[] nanos = new double[100_000];
        int calls = 0;
        long started = System.nanoTime();
        long now = started;
        while (now - started < MEASURED_NANOS && calls < nanos.length) {
            call.get();
            long after = System.nanoTime();
            nanos[calls++] = after - now;
            now = after;
        }
        return Arrays.copyOf(nanos, calls);
    }

    private static double allocatedMb(FittingTask task) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        Fitter.fit(task);
        return (threads.getCurrentThreadAllocatedBytes() - before) / 1e6;
    }

    private static String ms(double ms) {
        return ms < 1_000
                ? String.format(Locale.ROOT, "%.2f ms", ms)
                : String.format(Locale.ROOT, "%.1f s", ms / 1_000);
    }
}
