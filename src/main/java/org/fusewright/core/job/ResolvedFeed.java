package org.fusewright.core.job;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;

import java.util.List;

/**
 * A feed with its parts looked up.
 *
 * @param mainDevices candidates by rising rating, each with a holder in stock
 * @param wires candidates for its leads, thin to thick, in its colour
 */
public record ResolvedFeed(Feed feed, List<Device> mainDevices, List<Wire> wires) {

    public ResolvedFeed {
        mainDevices = List.copyOf(mainDevices);
        wires = List.copyOf(wires);
    }

    public String id() {
        return feed.id();
    }
}
