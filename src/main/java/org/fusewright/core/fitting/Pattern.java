package org.fusewright.core.fitting;

import org.fusewright.core.fitting.Rest.Limit;

/**
 * What one block of a form holds.
 *
 * @param kinds of items, each once
 * @param counts how many of each of these kinds
 * @param price of the block with the plugs of what stays empty
 */
record Pattern(int form, int[] kinds, int[] counts, long price) {

    /**
     * @param held items of each kind
     */
    static Pattern of(int form, int[] held, ItemKinds kinds, FormTable table) {
        int different = 0;
        for (int count : held) {
            different += count > 0 ? 1 : 0;
        }
        int[] of = new int[different];
        int[] counts = new int[different];
        int next = 0;
        int empty = table.positions[form];
        for (int k = 0; k < held.length; k++) {
            if (held[k] > 0) {
                of[next] = k;
                counts[next++] = held[k];
                empty -= held[k] * kinds.width[k];
            }
        }
        return new Pattern(form, of, counts, table.price[form] + table.plug[form] * empty);
    }

    /** How many of a kind, or 1 for the block itself. */
    int count(int kind) {
        if (kind == Limit.BLOCKS) {
            return 1;
        }
        for (int n = 0; n < kinds.length; n++) {
            if (kinds[n] == kind) {
                return counts[n];
            }
        }
        return 0;
    }
}
