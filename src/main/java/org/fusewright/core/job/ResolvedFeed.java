package org.fusewright.core.job;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;

import java.util.List;

/**
 * A feed with its parts looked up.
 *
 * @param mainDevices candidates by rising rating, each with a holder in stock; only the fixed
 *     rating when the job fixes one
 * @param mainWires candidates for its main lead, thin to thick, in its colour; one when fixed
 * @param wires candidates for its other leads, thin to thick, in its colour
 */
public record ResolvedFeed(
        Feed feed, List<Device> mainDevices, List<Wire> mainWires, List<Wire> wires) {

    public ResolvedFeed {
        mainDevices = List.copyOf(mainDevices);
        mainWires = List.copyOf(mainWires);
        wires = List.copyOf(wires);
    }

    public String id() {
        return feed.id();
    }
}
