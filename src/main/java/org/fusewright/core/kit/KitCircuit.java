package org.fusewright.core.kit;

import java.util.List;
import org.fusewright.core.sizing.SizedCircuit;

/** A circuit as sized, its leads' ends found. */
public record KitCircuit(SizedCircuit sized, List<KitLead> leads) {

    public KitCircuit {
        leads = List.copyOf(leads);
    }
}
