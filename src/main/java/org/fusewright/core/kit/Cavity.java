package org.fusewright.core.kit;

import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.sizing.CavityRole;
import org.fusewright.core.sizing.Lead;

import java.util.Optional;

/**
 * One hole of a block.
 *
 * @param id the block's id, the position and the side: "B1-2b"
 * @param position counted from 1, from the left as seen from the wire side
 * @param side 'a' is the feed side of a device, 'b' its load side
 * @param occupant the lead in it; empty for an empty cavity
 * @param plug what closes an empty cavity, unless the job leaves plugs out
 */
public record Cavity(
        String id, int position, char side, Optional<Occupant> occupant, Optional<Plug> plug) {

    /**
     * What sits in a cavity.
     *
     * @param terminal empty when no stocked terminal takes the lead; a check then fails
     * @param seal empty when no stocked seal takes the lead; a check then fails
     */
    public record Occupant(
            CavityRole role,
            String circuit,
            Lead lead,
            Optional<Terminal> terminal,
            Optional<Seal> seal) {}
}
