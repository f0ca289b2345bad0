package org.fusewright.core.fitting;

import java.util.List;

/**
 * A block type with one cap: what it costs and what it takes.
 *
 * @param block name of the block
 * @param cap name of the cap
 * @param positions 1 to 24
 * @param relayPairStarts first positions, counted from 1, of the pairs that may hold a relay; no
 *     two pairs overlap
 * @param clearanceMm the tallest item below the cap
 * @param maxTotalA most current through all items together; infinite for no limit
 * @param maxPositionA most current of a single item; infinite for no limit
 * @param costMicros block, cap and wedge, in millionths of the currency unit
 * @param emptyPositionMicros the plugs of one empty position, in millionths of the currency unit
 */
public record BlockForm(
        String block,
        String cap,
        int positions,
        List<Integer> relayPairStarts,
        double clearanceMm,
        double maxTotalA,
        double maxPositionA,
        long costMicros,
        long emptyPositionMicros) {

    /** A million currency units: leaves room to add up any number of blocks in a long. */
    private static final long MOST_MICROS = 1_000_000_000_000L;

    public BlockForm {
        Require.range("positions of " + block, positions, 1, 24);
        Require.range("clearanceMm of " + block, clearanceMm, 0, Double.POSITIVE_INFINITY);
        Require.range("maxTotalA of " + block, maxTotalA, 0, Double.POSITIVE_INFINITY);
        Require.range("maxPositionA of " + block, maxPositionA, 0, Double.POSITIVE_INFINITY);
        Require.range("costMicros of " + block, costMicros, 0, MOST_MICROS);
        Require.range("emptyPositionMicros of " + block, emptyPositionMicros, 0, MOST_MICROS / 100);
        relayPairStarts = relayPairStarts.stream().sorted().toList();
        int free = 1;
        for (int start : relayPairStarts) {
            if (start < free || start + 1 > positions) {
                throw new IllegalArgumentException(
                        "relay pair %d-%d of %s overlaps another or lies outside its %d positions"
                                .formatted(start, start + 1, block, positions));
            }
            free = start + 2;
        }
    }

    BlockForm withLimits(double clearanceMm, double maxTotalA, double maxPositionA) {
        return new BlockForm(
                block,
                cap,
                positions,
                relayPairStarts,
                clearanceMm,
                maxTotalA,
                maxPositionA,
                costMicros,
                emptyPositionMicros);
    }

    BlockForm withRelayPairs(List<Integer> starts) {
        return new BlockForm(
                block,
                cap,
                positions,
                starts,
                clearanceMm,
                maxTotalA,
                maxPositionA,
                costMicros,
                emptyPositionMicros);
    }

    BlockForm withCosts(long otherCostMicros, long otherEmptyPositionMicros) {
        return new BlockForm(
                block,
                cap,
                positions,
                relayPairStarts,
                clearanceMm,
                maxTotalA,
                maxPositionA,
                otherCostMicros,
                otherEmptyPositionMicros);
    }

    /** Whether the other is this form, whatever its limits and costs. */
    boolean isOfSameParts(BlockForm other) {
        return block.equals(other.block) && cap.equals(other.cap);
    }

    /** Whether the item alone is within height, current and width of this form. */
    public boolean takes(FittingItem item) {
        return clearanceMm >= item.heightMm()
                && MicroAmperes.limit(maxPositionA) >= MicroAmperes.of(item.currentA())
                && MicroAmperes.limit(maxTotalA) >= MicroAmperes.of(item.currentA())
                && (item.width() == Width.POSITION || !relayPairStarts.isEmpty());
    }
}
