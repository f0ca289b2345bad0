package org.fusewright.core.job;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.WireColour;

import java.util.List;
import java.util.Optional;

/**
 * A circuit with its parts looked up.
 *
 * @param devices candidates by kind in the order of preference, each by rising rating; only the
 *     fixed rating when the job fixes one; mini blades only
 * @param trunkWires candidates for its trunk, thin to thick, in its colour; one when fixed
 * @param wires candidates for its other leads, thin to thick, in its colour
 * @param groundWires candidates for its returns and its relay's ground, thin to thick
 * @param colour the colour that is stocked
 * @param colourAsked what the job asked for, when that is not stocked
 * @param relay the relay of the system's voltage, when it has one
 */
public record ResolvedCircuit(
        Circuit circuit,
        Feed feed,
        List<Device> devices,
        List<Wire> trunkWires,
        List<Wire> wires,
        List<Wire> groundWires,
        WireColour colour,
        Optional<WireColour> colourAsked,
        Optional<Relay> relay) {

    public ResolvedCircuit {
        devices = List.copyOf(devices);
        trunkWires = List.copyOf(trunkWires);
        wires = List.copyOf(wires);
        groundWires = List.copyOf(groundWires);
    }

    ResolvedCircuit withCircuit(Circuit other) {
        return new ResolvedCircuit(
                other, feed, devices, trunkWires, wires, groundWires, colour, colourAsked, relay);
    }

    public String id() {
        return circuit.id();
    }
}
