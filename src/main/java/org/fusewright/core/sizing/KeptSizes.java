package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Devices and wires that are settled already: a sizing that gets them chooses nothing anew, it only
 * judges what is there.
 *
 * @param devices by circuit
 * @param mainDevices by feed
 * @param wires by lead
 */
record KeptSizes(
        Map<String, Device> devices, Map<String, Device> mainDevices, Map<String, Wire> wires) {

    /** Nothing is settled. */
    static final KeptSizes NONE = new KeptSizes(Map.of(), Map.of(), Map.of());

    KeptSizes {
        devices = Map.copyOf(devices);
        mainDevices = Map.copyOf(mainDevices);
        wires = Map.copyOf(wires);
    }

    /** Everything that a sizing has chosen. */
    static KeptSizes of(SizedJob sized) {
        Map<String, Device> devices = new HashMap<>();
        Map<String, Device> mainDevices = new HashMap<>();
        Map<String, Wire> wires = new HashMap<>();
        for (SizedCircuit circuit : sized.circuits()) {
            circuit.device().ifPresent(device -> devices.put(circuit.id(), device));
            put(circuit.leads(), wires);
        }
        for (SizedFeed feed : sized.feeds()) {
            feed.mainDevice().ifPresent(device -> mainDevices.put(feed.id(), device));
            put(feed.leads(), wires);
        }
        return new KeptSizes(devices, mainDevices, wires);
    }

    private static void put(List<Lead> leads, Map<String, Wire> wires) {
        for (Lead lead : leads) {
            wires.put(lead.id(), lead.wire());
        }
    }

    KeptSizes withDevice(String circuit, Device device) {
        Map<String, Device> changed = new HashMap<>(devices);
        changed.put(circuit, device);
        return new KeptSizes(changed, mainDevices, wires);
    }

    KeptSizes withWire(String lead, Wire wire) {
        Map<String, Wire> changed = new HashMap<>(wires);
        changed.put(lead, wire);
        return new KeptSizes(devices, mainDevices, changed);
    }

    /** The one settled candidate, or all of them. */
    List<Device> deviceCandidates(String circuit, List<Device> all) {
        return Optional.ofNullable(devices.get(circuit)).map(List::of).orElse(all);
    }

    List<Device> mainCandidates(String feed, List<Device> all) {
        return Optional.ofNullable(mainDevices.get(feed)).map(List::of).orElse(all);
    }
}
