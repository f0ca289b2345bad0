package org.fusewright.core.kit;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.Millimetres;

import java.util.List;

/** All leads cut from one wire, and their summed cut length. */
public record WireLine(Wire wire, List<KitLead> leads, Millimetres total) {

    public WireLine {
        leads = List.copyOf(leads);
    }
}
