package org.fusewright.core.sizing;

import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.Supply;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * One of the things that a circuit's loads stand for, with its worst running current.
 *
 * @param name its title, numbered when the circuit has several of that title
 */
record SingleLoad(String name, Load load, double runningA) {

    static List<SingleLoad> listOf(Circuit circuit, Supply supply) {
        Map<String, Integer> ofTitle = new HashMap<>();
        for (Load load : circuit.loads()) {
            ofTitle.merge(load.title(), load.count(), Integer::sum);
        }
        Map<String, Integer> named = new HashMap<>();
        List<SingleLoad> singles = new ArrayList<>();
        for (Load load : circuit.loads()) {
            double runningA = RunningCurrent.worstA(load, supply);
            for (int i = 0; i < load.count(); i++) {
                int number = named.merge(load.title(), 1, Integer::sum);
                String name =
                        ofTitle.get(load.title()) == 1 ? load.title() : load.title() + " " + number;
                singles.add(new SingleLoad(name, load, runningA));
            }
        }
        return singles;
    }
}
