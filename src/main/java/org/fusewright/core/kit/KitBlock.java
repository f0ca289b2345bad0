package org.fusewright.core.kit;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Wedge;

import java.util.List;
import java.util.Optional;

/**
 * A block with what sits in it.
 *
 * @param id as the job's places name it, else "B1", "B2" and so on
 * @param seats in the order of positions
 * @param cavities by position, side a before side b
 */
public record KitBlock(
        String id,
        String location,
        Block block,
        Cap cap,
        Optional<Wedge> wedge,
        List<Seat> seats,
        List<Cavity> cavities) {

    /**
     * A device or relay in its position or pair of positions.
     *
     * @param part a {@link org.fusewright.core.catalog.Device} or a {@link
     *     org.fusewright.core.catalog.Relay}
     */
    public record Seat(List<Integer> positions, String circuit, Part part) {

        public Seat {
            positions = List.copyOf(positions);
        }
    }

    public KitBlock {
        seats = List.copyOf(seats);
        cavities = List.copyOf(cavities);
    }
}
