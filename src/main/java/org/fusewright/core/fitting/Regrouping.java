package org.fusewright.core.fitting;

import java.util.Comparator;

/**
 * Exchanges items between the blocks of a location at no change of price, while that brings more
 * items into the block of the one that they like to sit beside or, among equals, fills the blocks
 * (larger ones first) more in the job's order. Good effort: it ends where no single exchange
 * improves, or after {@value #MOST_TRIES} tries, and knows nothing of the seats within a block.
 */
final class Regrouping {

    private static final int MOST_TRIES = 200_000;

    private static final int[] NOTHING = {};

    private final Filling filling;
    private final Site site;

    /** The place of each block in the order in which blocks fill. */
    private final int[] rank;

    private final boolean[] wished;
    private int tries;

    private Regrouping(Filling filling) {
        this.filling = filling;
        site = filling.site;
        rank = new int[filling.blocks()];
        Comparator<Integer> largestFirst =
                Comparator.comparingInt((Integer b) -> -site.table.positions[filling.form[b]])
                        .thenComparingInt(b -> filling.form[b]);
        int[] inOrder = Indexes.sorted(rank.length, largestFirst);
        for (int r = 0; r < inOrder.length; r++) {
            rank[inOrder[r]] = r;
        }
        wished = new boolean[site.size()];
        for (int i = 0; i < site.size(); i++) {
            if (site.besides[i] >= 0) {
                wished[i] = true;
                wished[site.besides[i]] = true;
            }
        }
    }

    static void improve(Filling filling) {
        if (filling.blocks() > 1) {
            Regrouping regrouping = new Regrouping(filling);
            while (regrouping.pass() && regrouping.tries < MOST_TRIES) {}
        }
    }

    /** Tries every single exchange; true when one of them was an improvement. */
    private boolean pass() {
        boolean improved = false;
        for (int i = 0; i < site.size(); i++) {
            for (int b = 0; b < filling.blocks(); b++) {
                improved |= exchange(new int[] {i}, NOTHING, b);
            }
            for (int j = i + 1; j < site.size(); j++) {
                improved |= exchange(new int[] {i}, new int[] {j}, filling.blockOf[j]);
            }
            if (site.relay[i]) {
                improved |= exchangeForTwoDevices(i);
            }
            if (isMet(i)) {
                improved |= exchangeTogether(i);
            }
        }
        return improved;
    }

    private boolean exchangeForTwoDevices(int relay) {
        boolean improved = false;
        for (int j = 0; j < site.size(); j++) {
            for (int k = j + 1; k < site.size() && !site.relay[j]; k++) {
                if (!site.relay[k] && filling.blockOf[j] == filling.blockOf[k]) {
                    improved |= exchange(new int[] {relay}, new int[] {j, k}, filling.blockOf[j]);
                }
            }
        }
        return improved;
    }

    /** An item and the one that it sits beside, for two of another block that sit so too. */
    private boolean exchangeTogether(int i) {
        boolean improved = false;
        for (int j = i + 1; j < site.size(); j++) {
            if (isMet(j)) {
                improved |=
                        exchange(
                                new int[] {i, site.besides[i]},
                                new int[] {j, site.besides[j]},
                                filling.blockOf[j]);
            }
        }
        return improved;
    }

    private boolean isMet(int i) {
        return site.besides[i] >= 0 && filling.blockOf[site.besides[i]] == filling.blockOf[i];
    }

    /**
     * Exchanges items of one block for items of the block there, when that is allowed and better.
     */
    private boolean exchange(int[] here, int[] there, int blockThere) {
        int blockHere = filling.blockOf[here[0]];
        if (blockHere == blockThere
                || tries >= MOST_TRIES
                || !keepsPrice(here, there, blockThere)) {
            return false;
        }
        tries++;
        long disorder = (weight(here) - weight(there)) * (rank[blockThere] - rank[blockHere]);
        boolean anyWish = anyWish(here) || anyWish(there);
        if (!anyWish && disorder >= 0) {
            return false;
        }
        int before = wishesMet(here) + wishesMet(there);
        take(here);
        take(there);
        if (put(here, blockThere)) {
            if (put(there, blockHere)) {
                int gained = wishesMet(here) + wishesMet(there) - before;
                if (gained > 0 || (gained == 0 && disorder < 0)) {
                    return true;
                }
                take(there);
            }
            take(here);
        }
        putBack(here, blockHere);
        putBack(there, blockThere);
        return false;
    }

    private boolean keepsPrice(int[] here, int[] there, int blockThere) {
        int f = filling.form[filling.blockOf[here[0]]];
        return site.table.plug[f] == site.table.plug[filling.form[blockThere]]
                || width(here) == width(there);
    }

    private int width(int[] items) {
        int width = 0;
        for (int i : items) {
            width += site.width[i];
        }
        return width;
    }

    /** Earlier items weigh more. */
    private long weight(int[] items) {
        long weight = 0;
        for (int i : items) {
            weight += site.size() - i;
        }
        return weight;
    }

    private boolean anyWish(int[] items) {
        for (int i : items) {
            if (wished[i]) {
                return true;
            }
        }
        return false;
    }

    /** Wishes met that the items have or are the object of; a wish between two of them twice. */
    private int wishesMet(int[] items) {
        int met = 0;
        for (int i : items) {
            for (int j = 0; wished[i] && j < site.size(); j++) {
                boolean wish = site.besides[j] == i || site.besides[i] == j;
                met += wish && filling.blockOf[i] == filling.blockOf[j] ? 1 : 0;
            }
        }
        return met;
    }

    private void take(int[] items) {
        for (int i : items) {
            filling.take(i);
        }
    }

    /** Puts all of them, or none. */
    private boolean put(int[] items, int block) {
        for (int n = 0; n < items.length; n++) {
            if (!filling.hasRoom(items[n], block) || !filling.hasCurrent(items[n], block)) {
                for (int undo = 0; undo < n; undo++) {
                    filling.take(items[undo]);
                }
                return false;
            }
            filling.put(items[n], block);
        }
        return true;
    }

    private void putBack(int[] items, int block) {
        for (int i : items) {
            filling.put(i, block);
        }
    }
}
