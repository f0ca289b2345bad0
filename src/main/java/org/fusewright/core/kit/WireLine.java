package org.fusewright.core.kit;

import java.util.List;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.Millimetres;

/** All leads cut from one wire, and their summed cut length. */
public record WireLine(Wire wire, List<KitLead> leads, Millimetres total) {

    public WireLine {
        leads = List.copyOf(leads);
    }
}
