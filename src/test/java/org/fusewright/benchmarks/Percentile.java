package org.fusewright.benchmarks;

import java.util.List;

/** What a share of measured times does not exceed. */
final class Percentile {

    private Percentile() {}

    /** The middle one; of two in the middle, the longer. */
    static <T extends Comparable<T>> T median(List<T> times) {
        return of(times, 0.5);
    }

    /**
     * @param share of the times, from 0 to below 1
     */
    static <T extends Comparable<T>> T of(List<T> times, double share) {
        return times.stream()
                .sorted()
                .skip((long) (share * times.size()))
                .findFirst()
                .orElseThrow();
    }
}
