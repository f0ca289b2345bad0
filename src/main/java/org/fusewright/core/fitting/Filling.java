package org.fusewright.core.fitting;

import java.util.Arrays;

/** Blocks of one location and the block that each of its items is in; changed in place. */
final class Filling {

    final Site site;

    /** The form of each block. */
    final int[] form;

    /** The block of each item; -1 for none yet. */
    final int[] blockOf;

    private final int[] devices;
    private final int[] relays;
    private final long[] current;

    Filling(Site site, int[] form) {
        this.site = site;
        this.form = form;
        blockOf = new int[site.size()];
        Arrays.fill(blockOf, -1);
        devices = new int[form.length];
        relays = new int[form.length];
        current = new long[form.length];
    }

    Filling copy() {
        Filling copy = new Filling(site, form);
        for (int i = 0; i < blockOf.length; i++) {
            if (blockOf[i] >= 0) {
                copy.put(i, blockOf[i]);
            }
        }
        return copy;
    }

    int blocks() {
        return form.length;
    }

    boolean hasRoom(int item, int block) {
        int f = form[block];
        return site.takes(f, item)
                && devices[block] + 2 * relays[block] + site.width[item] <= site.table.positions[f]
                && (!site.relay[item] || relays[block] < site.table.pairs[f]);
    }

    boolean hasCurrent(int item, int block) {
        return site.current[item] <= spareCurrent(block);
    }

    boolean isWithinCurrents() {
        for (int b = 0; b < form.length; b++) {
            if (spareCurrent(b) < 0) {
                return false;
            }
        }
        return true;
    }

    void put(int item, int block) {
        blockOf[item] = block;
        count(item, block, 1);
    }

    void take(int item) {
        count(item, blockOf[item], -1);
        blockOf[item] = -1;
    }

    private void count(int item, int block, int by) {
        if (site.relay[item]) {
            relays[block] += by;
        } else {
            devices[block] += by;
        }
        current[block] += by * site.current[item];
    }

    int devices(int block) {
        return devices[block];
    }

    int relays(int block) {
        return relays[block];
    }

    int free(int block) {
        return site.table.positions[form[block]] - devices[block] - 2 * relays[block];
    }

    long spareCurrent(int block) {
        return site.table.limit[form[block]] - current[block];
    }

    int free() {
        int free = 0;
        for (int b = 0; b < form.length; b++) {
            free += free(b);
        }
        return free;
    }

    long costMicros() {
        long cost = 0;
        for (int b = 0; b < form.length; b++) {
            BlockForm here = site.table.whole.get(form[b]);
            cost += here.costMicros() + here.emptyPositionMicros() * free(b);
        }
        return cost;
    }

    /** Cost and count in one, see {@link FormTable}. */
    long price() {
        long price = 0;
        for (int b = 0; b < form.length; b++) {
            price += site.table.price[form[b]] + site.table.plug[form[b]] * free(b);
        }
        return price;
    }
}
