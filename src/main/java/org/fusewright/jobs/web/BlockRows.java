package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Block;

import java.util.ArrayList;
import java.util.List;

/**
 * A block's positions as rows that fit a column of a page: a long block is drawn broken, never
 * within a relay pair.
 */
final class BlockRows {
    /** Positions from {@code first} to {@code last}, which stand beside each other. */
    record Row(int first, int last) {
        int positions() {
            return last - first + 1;
        }
    }

    private static final int LONGEST = 4;

    private BlockRows() {}

    static List<Row> of(Block block) {
        List<Row> rows = new ArrayList<>();
        int first = 1;
        while (first <= block.positions()) {
            int last = Math.min(first + LONGEST - 1, block.positions());
            int end = last;
            boolean split = block.relayPairs().stream().anyMatch(pair -> pair.first() == end);
            last = split && last > first ? last - 1 : last;
            rows.add(new Row(first, last));
            first = last + 1;
        }
        return rows;
    }
}
