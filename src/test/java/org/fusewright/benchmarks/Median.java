package org.fusewright.benchmarks;

import java.util.List;

/** The middle one of measured times. */
final class Median {

    private Median() {}

    /** Of two in the middle, the longer. */
    static long of(List<Long> times) {
        return times.stream().sorted().skip(times.size() / 2).findFirst().orElseThrow();
    }
}
