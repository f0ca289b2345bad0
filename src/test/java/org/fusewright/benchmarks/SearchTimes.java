package org.fusewright.benchmarks;

import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What each question of a search took: as a call of the service, as plain SQL, as a whole request.
 * Printed with the ratios of the medians; the highest of the calls is the one to judge by.
 */
@AuxCounters(AuxCounters.Type.EVENTS)
@State(Scope.Thread)
public class SearchTimes {

    private final Map<String, List<Long>> calls = new LinkedHashMap<>();
    private final Map<String, List<Long>> plain = new LinkedHashMap<>();
    private final Map<String, List<Long>> requests = new LinkedHashMap<>();

    void add(String name, long call, long sql, long request) {
        calls.computeIfAbsent(name, _ -> new ArrayList<>()).add(call);
        plain.computeIfAbsent(name, _ -> new ArrayList<>()).add(sql);
        requests.computeIfAbsent(name, _ -> new ArrayList<>()).add(request);
    }

    @Setup(Level.Iteration)
    public void forget() {
        List.of(calls, plain, requests).forEach(Map::clear);
    }

    @TearDown(Level.Iteration)
    public void print() {
        for (String name : calls.keySet()) {
            double sql = Percentile.median(plain.get(name));
            System.out.printf(
                    "%n%s: SQL %.0f us, call %.3f, request %.2f times that",
                    name,
                    sql / 1000,
                    Percentile.median(calls.get(name)) / sql,
                    Percentile.median(requests.get(name)) / sql);
        }
        System.out.println();
    }

    public double highestRatio() {
        return calls.keySet().stream()
                .mapToDouble(
                        name ->
                                (double) Percentile.median(calls.get(name))
                                        / Percentile.median(plain.get(name)))
                .max()
                .orElseThrow();
    }
}
