package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Optional;

/**
 * A circuit with its parts chosen.
 *
 * @param device the device that protects it, its own or another circuit's
 * @param carriedA what that device carries
 * @param passed lead of another circuit behind the same device that its current runs through
 * @param highestA prospective short-circuit current at the device
 * @param farOhm resistance of the way to its farthest load and back, battery and devices included
 */
record CircuitPlan(
        CircuitDemand demand,
        Device device,
        double carriedA,
        List<LaidLead> leads,
        Optional<LaidLead> passed,
        List<SizedSplice> splices,
        boolean splicesFit,
        List<SizedLoad> loads,
        double highestA,
        double farOhm,
        List<Text> why) {

    CircuitPlan {
        leads = List.copyOf(leads);
        splices = List.copyOf(splices);
        loads = List.copyOf(loads);
        why = List.copyOf(why);
    }

    CircuitPlan withWhy(List<Text> reasons) {
        return new CircuitPlan(
                demand,
                device,
                carriedA,
                leads,
                passed,
                splices,
                splicesFit,
                loads,
                highestA,
                farOhm,
                reasons);
    }

    String id() {
        return demand.id();
    }

    boolean ownsDevice() {
        return demand.resolved().circuit().contactFrom().isEmpty();
    }
}
