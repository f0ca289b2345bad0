package org.fusewright.core.fitting;

import java.util.List;

/**
 * What the blocks of a task cost less than by their prices, where that hangs on all of them
 * together. Forms are told by their place in the task.
 */
public interface Discount {

    /**
     * @param blocks of each form
     * @param emptyPositions in all of them together
     */
    long micros(int[] blocks, int emptyPositions);

    /** The most that any blocks could get; close to what these get. */
    Most mostNear(int[] blocks, int emptyPositions);

    /** Equal for discounts that are alike in everything. */
    List<Integer> key();

    /** A sum that no discount is above. */
    record Most(long fixedMicros, long[] blockMicros, long emptyPositionMicros) {}
}
