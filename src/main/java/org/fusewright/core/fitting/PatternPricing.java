package org.fusewright.core.fitting;

import java.util.Arrays;

/**
 * The most valuable thing that one block of a form can hold, when each kind of item has a value: a
 * knapsack with positions, relay pairs and current. Depth first, the best for its room first;
 * prices of current, set once for each search, bound what is still to come. Made once for a site
 * and used again for each search.
 */
final class PatternPricing {

    /** Values are below it, so that sums of doubles are exact but for the price of current. */
    static final long MOST_VALUE = 1L << 46;

    /** Values are whole numbers: a bound is off by less than this. */
    private static final double ROUNDING = 0.5;

    private static final int HALVINGS = 12;

    /** What is left of a block is often short of something else than the whole block is. */
    private static final double[] FACTORS = {1, 0, 0.5, 0.85, 1.2, 2};

    private static final int STEPS_WITHOUT_MEMORY = 100;
    private static final int MEMORY_BITS = 13;
    private static final int MEMORY = 1 << MEMORY_BITS;

    /** Leaves room for the rest of a state in a long. */
    private static final long MOST_CURRENT = (1L << 43) - 1;

    /** Bits for the number of a kind beside its gain. */
    private static final int KIND_BITS = 10;

    private final FormTable table;
    private final ItemKinds kinds;
    private final int[] order;
    private final int[] topRelays;
    private final int[] topDevices;
    private final double[][] bestRelay;
    private final double[][] bestDevice;
    private final double[] prices = new double[FACTORS.length];

    /** By place in the order: what is only taken when all of this is; null where not asked yet. */
    private final int[][] dominated;

    /** By place in the order: how many that it is dominated by were passed by. */
    private final int[] barred;

    private final long[] sorted;
    private final int[] taken;
    private final int[] bestTaken;

    /** What room was left, and beside it the most that was in the block then. */
    private long[] room = {};

    private long[] most = {};

    private int form;
    private long[] value;
    private int[] counts;
    private Budget budget;
    private int relays;
    private int end;
    private int pricesUsed;
    private long best;
    private boolean cutOff;
    private int entered;

    /**
     * @param worth no more than this is in any block of the form
     * @param counts of each kind in the best block found
     */
    record Found(long worth, long value, int[] counts) {}

    PatternPricing(FormTable table, ItemKinds kinds) {
        this.table = table;
        this.kinds = kinds;
        int count = kinds.size();
        order = new int[count];
        sorted = new long[count];
        dominated = new int[count][];
        barred = new int[count];
        taken = new int[count];
        bestTaken = new int[count];
        bestRelay = new double[FACTORS.length][count + 1];
        bestDevice = new double[FACTORS.length][count + 1];
        int most = Arrays.stream(table.positions).max().orElse(0);
        topRelays = new int[most];
        topDevices = new int[most];
        value = new long[0];
        counts = new int[0];
        budget = new Budget(0);
    }

    /**
     * @param value of one item, by kind
     * @param counts how many items of each kind there are
     */
    Found find(int form, long[] value, int[] counts, Budget budget) {
        this.form = form;
        this.value = value;
        this.counts = counts;
        this.budget = budget;
        putInOrder();
        best = 0;
        cutOff = false;
        entered = 0;
        Arrays.fill(taken, 0);
        Arrays.fill(bestTaken, 0);
        Arrays.fill(barred, 0, end, 0);
        Arrays.fill(dominated, 0, end, null);
        int positions = table.positions[form];
        int pairs = table.pairs[form];
        double bound = atMost(0, positions, pairs, table.limit[form]);
        extend(0, 0, positions, pairs, table.limit[form]);
        long worth = cutOff ? (long) Math.ceil(bound + ROUNDING) : best;
        return new Found(worth, best, bestTaken.clone());
    }

    /** Relays, then devices, each the best for its room first. */
    private void putInOrder() {
        end = 0;
        for (boolean relay : new boolean[] {true, false}) {
            for (int k = 0; k < kinds.size(); k++) {
                if (kinds.relay[k] == relay
                        && value[k] > 0
                        && counts[k] > 0
                        && kinds.takers[k].forms[form]
                        && kinds.current[k] <= table.limit[form]) {
                    order[end++] = k;
                }
            }
            relays = relay ? end : relays;
        }
        double price = currentPrice();
        sort(0, relays, price);
        sort(relays, end, price);
        pricesUsed = price == 0 ? 1 : FACTORS.length;
        for (int p = 0; p < pricesUsed; p++) {
            prices[p] = price * FACTORS[p];
            double[] relay = bestRelay[p];
            double[] device = bestDevice[p];
            relay[end] = 0;
            device[end] = 0;
            for (int n = end - 1; n >= 0; n--) {
                double gain = gain(order[n], prices[p]);
                relay[n] = n < relays ? Math.max(gain, relay[n + 1]) : 0;
                device[n] = n < relays ? device[n + 1] : Math.max(gain, device[n + 1]);
            }
        }
    }

    private double gain(int kind, double price) {
        return price == 0 ? value[kind] : value[kind] - price * kinds.current[kind];
    }

    private void sort(int from, int to, double price) {
        double largest = 1;
        for (int n = from; n < to; n++) {
            largest = Math.max(largest, Math.abs(gain(order[n], price)));
        }
        double scale = (1L << 52) / largest;
        for (int n = from; n < to; n++) {
            long gain = (long) (gain(order[n], price) * scale);
            sorted[n] = (-gain << KIND_BITS) + order[n];
        }
        Arrays.sort(sorted, from, to);
        for (int n = from; n < to; n++) {
            order[n] = (int) (sorted[n] & (1 << KIND_BITS) - 1);
        }
    }

    /** The price of a microampere at which a whole block is worth least by its bound. */
    private double currentPrice() {
        if (currentOfFilled(0) <= table.limit[form]) {
            return 0;
        }
        double low = 0;
        double high = 0;
        for (int n = 0; n < end; n++) {
            int k = order[n];
            high = Math.max(high, (double) value[k] / Math.max(1, kinds.current[k]));
        }
        for (int n = 0; n < HALVINGS; n++) {
            double middle = (low + high) / 2;
            if (currentOfFilled(middle) > table.limit[form]) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return boundAt(high) < boundAt(0) ? high : 0;
    }

    private double boundAt(double price) {
        double relay = 0;
        double device = 0;
        for (int n = 0; n < end; n++) {
            double gain = gain(order[n], price);
            if (n < relays) {
                relay = Math.max(relay, gain);
            } else {
                device = Math.max(device, gain);
            }
        }
        return atMost(
                relay, device, table.positions[form], table.pairs[form], price, table.limit[form]);
    }

    /** Of a block filled with what gains most for its positions, whatever its current. */
    private double currentOfFilled(double price) {
        int positions = table.positions[form];
        int pairs = Math.min(table.pairs[form], positions / 2);
        int relayCount = top(0, relays, pairs, price, topRelays);
        int deviceCount = top(relays, end, positions, price, topDevices);
        double current = 0;
        int r = 0;
        int d = 0;
        while (positions > 0) {
            double relay = r < relayCount && positions > 1 ? gain(topRelays[r], price) : 0;
            double device = d < deviceCount ? gain(topDevices[d], price) : 0;
            if (relay > 0 && relay >= 2 * device) {
                current += kinds.current[topRelays[r++]];
                positions -= 2;
            } else if (device > 0) {
                current += kinds.current[topDevices[d++]];
                positions--;
            } else {
                break;
            }
        }
        return current;
    }

    /** The items that gain most, by kind, one for each; how many there are. */
    private int top(int from, int to, int most, double price, int[] top) {
        int size = 0;
        for (int n = from; n < to; n++) {
            int k = order[n];
            double gain = gain(k, price);
            for (int c = 0; c < counts[k] && gain > 0; c++) {
                if (size == most && (most == 0 || gain(top[size - 1], price) >= gain)) {
                    break;
                }
                int at = size < most ? size++ : size - 1;
                while (at > 0 && gain(top[at - 1], price) < gain) {
                    top[at] = top[at - 1];
                    at--;
                }
                top[at] = k;
            }
        }
        return size;
    }

    private void extend(int from, long worth, int positions, int pairs, long current) {
        if (worth > best) {
            best = worth;
            System.arraycopy(taken, 0, bestTaken, 0, taken.length);
        }
        if (positions == 0 || isKnown(from, worth, positions, pairs, current)) {
            return;
        }
        int n = from;
        while (n < end && !cutOff) {
            if (worth + atMost(n, positions, pairs, current) < best + ROUNDING) {
                if (n >= relays) {
                    break;
                }
                n = passBy(n, relays);
                continue;
            }
            int k = order[n];
            int width = kinds.width[k];
            if (barred[n] == 0
                    && taken[k] < counts[k]
                    && width <= positions
                    && (n >= relays || pairs > 0)
                    && kinds.current[k] <= current) {
                if (!budget.step()) {
                    cutOff = true;
                    break;
                }
                taken[k]++;
                extend(
                        n,
                        worth + value[k],
                        positions - width,
                        n < relays ? pairs - 1 : pairs,
                        current - kinds.current[k]);
                taken[k]--;
            }
            n = passBy(n, n + 1);
        }
        for (int m = from; m < n; m++) {
            bar(m, -1);
        }
    }

    /**
     * Whether as much room was left before, with no less in the block. What is barred may differ,
     * but of equally good contents the first in the order is always reached.
     */
    private boolean isKnown(int from, long worth, int positions, int pairs, long current) {
        if (++entered < STEPS_WITHOUT_MEMORY || current > MOST_CURRENT) {
            return false;
        }
        if (entered == STEPS_WITHOUT_MEMORY) {
            forget();
        }
        long key = ((current * 1_024 + from) * 32 + positions) * 16 + pairs + 1;
        int at = (int) ((key * 0x9E3779B97F4A7C15L) >>> 64 - MEMORY_BITS);
        if (room[at] == key && most[at] >= worth) {
            return true;
        }
        room[at] = key;
        most[at] = worth;
        return false;
    }

    private void forget() {
        if (room.length == 0) {
            room = new long[MEMORY];
            most = new long[MEMORY];
        }
        Arrays.fill(room, 0);
    }

    private int passBy(int from, int to) {
        for (int n = from; n < to; n++) {
            bar(n, 1);
        }
        return to;
    }

    /** While some of a kind are left, what is worth no more and needs no less is not taken. */
    private void bar(int n, int by) {
        if (taken[order[n]] < counts[order[n]]) {
            int[] others = dominated[n];
            if (others == null) {
                others = dominatedBy(n);
                dominated[n] = others;
            }
            for (int m : others) {
                barred[m] += by;
            }
        }
    }

    private int[] dominatedBy(int n) {
        int last = n < relays ? relays : end;
        int[] found = new int[last - n];
        int count = 0;
        for (int m = n + 1; m < last; m++) {
            if (value[order[m]] <= value[order[n]]
                    && kinds.current[order[m]] >= kinds.current[order[n]]) {
                found[count++] = m;
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** What the rest of a block can still add, of the kinds from one in the order on. */
    private double atMost(int n, int positions, int pairs, long current) {
        double least = Double.POSITIVE_INFINITY;
        for (int p = 0; p < pricesUsed; p++) {
            double relay = bestRelay[p][n];
            double device = bestDevice[p][n];
            least = Math.min(least, atMost(relay, device, positions, pairs, prices[p], current));
        }
        return least;
    }

    private static double atMost(
            double relay, double device, int positions, int pairs, double price, long current) {
        int most = relay > 2 * device ? Math.min(pairs, positions / 2) : 0;
        double left = most * relay + (positions - 2 * most) * device;
        return price == 0 ? left : left + price * current;
    }
}
