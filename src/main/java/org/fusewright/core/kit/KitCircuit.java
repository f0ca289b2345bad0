package org.fusewright.core.kit;

import org.fusewright.core.sizing.SizedCircuit;

import java.util.List;

/** A circuit as sized, its leads' ends found. */
public record KitCircuit(SizedCircuit sized, List<KitLead> leads) {

    public KitCircuit {
        leads = List.copyOf(leads);
    }
}
