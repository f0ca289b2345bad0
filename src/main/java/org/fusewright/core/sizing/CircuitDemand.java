package org.fusewright.core.sizing;

import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.Supply;

import java.util.List;

/**
 * A circuit with the currents of its loads.
 *
 * @param loads each single load
 * @param runningA sum of their worst running currents
 * @param startUp of its own loads together
 */
record CircuitDemand(
        ResolvedCircuit resolved, List<SingleLoad> loads, double runningA, StartUp startUp) {

    CircuitDemand {
        loads = List.copyOf(loads);
    }

    static CircuitDemand of(ResolvedCircuit resolved, Supply supply) {
        List<SingleLoad> loads = SingleLoad.listOf(resolved.circuit(), supply);
        double runningA = 0;
        for (SingleLoad load : loads) {
            runningA += load.runningA();
        }
        return new CircuitDemand(resolved, loads, runningA, StartUp.of(loads));
    }

    String id() {
        return resolved.id();
    }

    /** Current through its relay's coil at charging voltage, coil at 20 C; 0 without a relay. */
    double coilA(Supply supply) {
        return resolved.relay().map(relay -> supply.chargingV() / relay.coilOhm()).orElse(0.0);
    }
}
