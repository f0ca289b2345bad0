package org.fusewright.core.sizing;

import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.Supply;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One of the things that a circuit's loads stand for, with its worst running current.
 *
 * @param name its title, numbered when the circuit has several of that title
 */
record SingleLoad(String name, Load load, double runningA) {

    static List<SingleLoad> listOf(Circuit circuit, Supply supply) {
        if (circuit.loadCount() == 1) {
            Load load = circuit.loads().getFirst();
            return List.of(new SingleLoad(load.title(), load, RunningCurrent.worstA(load, supply)));
        }
        Map<String, Integer> ofTitle = new HashMap<>();
        for (Load load : circuit.loads()) {
            ofTitle.merge(load.title(), load.count(), Integer::sum);
        }
        Set<String> taken = new HashSet<>();
        Map<String, Integer> lastOfTitle = new HashMap<>();
        List<SingleLoad> singles = new ArrayList<>();
        for (Load load : circuit.loads()) {
            double runningA = RunningCurrent.worstA(load, supply);
            boolean alone = ofTitle.get(load.title()) == 1 && taken.add(load.title());
            for (int i = 0; i < load.count(); i++) {
                String name = alone ? load.title() : numbered(load.title(), lastOfTitle, taken);
                singles.add(new SingleLoad(name, load, runningA));
            }
        }
        return singles;
    }

    private static String numbered(
            String title, Map<String, Integer> lastOfTitle, Set<String> taken) {
        String name;
        do {
            name = title + " " + lastOfTitle.merge(title, 1, Integer::sum);
        } while (!taken.add(name));
        return name;
    }
}
