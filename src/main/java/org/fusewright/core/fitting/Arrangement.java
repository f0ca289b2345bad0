package org.fusewright.core.fitting;

import java.util.List;

/**
 * The blocks that hold the items of a task.
 *
 * @param blocks by location in the order of the locations' first items, within a location by their
 *     earliest item; a block that only gives spare positions comes last
 * @param costMicros blocks, caps, wedges and plugs of empty positions, less a discount if there is
 *     one
 * @param lowerBoundMicros proven: no arrangement costs less
 * @param optimal whether the bound is met, so that the cost is proven the least; among arrangements
 *     of that cost the fewest blocks are proven too, unless the search ran out of steps
 * @param unplaced ids of the items that no form takes, in the order of the job
 * @param released ids of the items whose fixed place no block can give together with the others'
 * @param moved ids of the items that had a place, not fixed, and sit elsewhere now
 */
public record Arrangement(
        List<PlacedBlock> blocks,
        long costMicros,
        long lowerBoundMicros,
        boolean optimal,
        List<String> unplaced,
        List<String> released,
        List<String> moved) {

    Arrangement withBlocks(List<PlacedBlock> others) {
        return new Arrangement(
                others, costMicros, lowerBoundMicros, optimal, unplaced, released, moved);
    }

    /** With what it costs after a discount, and what any as good costs at least then. */
    public Arrangement lessDiscount(long micros, long lowestMicros) {
        long cost = costMicros - micros;
        long bound = Math.min(cost, lowestMicros);
        return new Arrangement(blocks, cost, bound, cost == bound, unplaced, released, moved);
    }

    public Arrangement {
        blocks = List.copyOf(blocks);
        unplaced = List.copyOf(unplaced);
        released = List.copyOf(released);
        moved = List.copyOf(moved);
    }
}
