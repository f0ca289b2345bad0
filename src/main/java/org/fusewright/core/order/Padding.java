package org.fusewright.core.order;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

/**
 * Fills up orders below their supplier's minimum with more of the same parts. Of each offer more
 * may be bought; which sums can be reached so is kept as bits, offer by offer, until the minimum is
 * met to the minor unit, or the steps are used up.
 */
final class Padding {

    /** More of one offer: up to each quantity, and what that adds. */
    private record Raise(int part, int offer, int[] quantities, int[] adds) {}

    private static final long MOST_STEPS = 300_000;
    private static final int MOST_SUM = 50_000;
    private static final int MOST_OFFERS = 60;
    private static final int WORD = 64;

    private final Market market;
    private final int[][] quantities;
    private final int[][] least;
    private final int supplier;
    private final long lacking;
    private boolean isLeast;

    private Padding(Market market, int[][] quantities, int[][] least, int supplier, long lacking) {
        this.market = market;
        this.quantities = quantities;
        this.least = least;
        this.supplier = supplier;
        this.lacking = lacking;
    }

    /** What came of filling up orders. */
    enum Outcome {
        /** Each order is worth as little as it can when it reaches its minimum. */
        LEAST,
        /** Each order reaches its minimum. */
        ENOUGH,
        /** Some order stays below its minimum. */
        FAILED
    }

    /**
     * Lifts each order that is made over its minimum. Changes {@code quantities}.
     *
     * @return whether every order that is made reaches its minimum
     */
    static boolean pad(Market market, int[][] quantities) {
        return pad(market, quantities, market.usedBy(quantities));
    }

    /**
     * Likewise, for all suppliers that are ordered from, even if nothing is bought there yet.
     *
     * @param ordered by supplier
     */
    static boolean pad(Market market, int[][] quantities, boolean[] ordered) {
        return fill(market, quantities, ordered) != Outcome.FAILED;
    }

    /** Likewise, telling whether that was done at least cost. */
    static Outcome fill(Market market, int[][] quantities, boolean[] ordered) {
        long[] values = market.valuesOf(quantities);
        boolean least = true;
        for (int s = 0; s < values.length; s++) {
            long lacking = market.minimums()[s] - values[s];
            if (ordered[s] && lacking > 0) {
                Padding padding = new Padding(market, quantities, quantities, s, lacking);
                if (!padding.padOne()) {
                    return Outcome.FAILED;
                }
                least &= padding.isLeast;
            }
        }
        return least ? Outcome.LEAST : Outcome.ENOUGH;
    }

    /**
     * What an order at a supplier is worth at least when it is not below its minimum: sums of whole
     * packs do not reach everything, and what only this supplier offers is bought there. Where
     * there are too many sums to look at, the minimum itself.
     *
     * @param out suppliers of whom nothing is bought
     */
    static long leastReachable(Market market, int supplier, boolean[] out) {
        long minimum = market.minimums()[supplier];
        int[][] base = new int[market.parts().size()][];
        int[][] least = new int[base.length][];
        int offers = 0;
        for (int p = 0; p < base.length; p++) {
            PartSupply part = market.parts().get(p);
            base[p] = new int[part.offers().size()];
            least[p] = new int[base[p].length];
            int open = 0;
            int only = -1;
            for (int i = 0; i < base[p].length; i++) {
                OfferCosts costs = part.offers().get(i);
                if (!out[costs.supplier()]) {
                    open++;
                    only = i;
                    offers += costs.supplier() == supplier ? 1 : 0;
                }
            }
            if (open == 1 && part.offers().get(only).supplier() == supplier) {
                least[p][only] = part.offers().get(only).packsUp(part.need());
                base[p][only] = part.offers().get(only).cheapestFrom(least[p][only]);
            }
        }
        if (minimum == 0 || offers > MOST_OFFERS) {
            return minimum;
        }
        long sure = market.valuesOf(base)[supplier];
        if (sure >= minimum) {
            return sure;
        }
        Padding padding = new Padding(market, base, least, supplier, minimum - sure);
        return padding.padOne() && padding.isLeast ? market.valuesOf(base)[supplier] : minimum;
    }

    private boolean padOne() {
        if (lacking > MOST_SUM) {
            return buyMost() && padRest();
        }
        Raise single = findSingle();
        if (single == null) {
            return false;
        }
        int enough = single.adds()[0];
        isLeast = enough <= MOST_SUM;
        if (enough == lacking || !isLeast || !padExactly(enough)) {
            quantities[single.part()][single.offer()] = single.quantities()[0];
        }
        return true;
    }

    /** Buys as much of one offer as leaves a sum that can be met exactly; the finest offer. */
    private boolean buyMost() {
        long most = lacking - MOST_SUM / 2;
        int part = -1;
        int offer = -1;
        int quantity = 0;
        long least = Long.MAX_VALUE;
        for (int p = 0; p < quantities.length; p++) {
            for (int i = 0; i < quantities[p].length; i++) {
                OfferCosts costs = market.parts().get(p).offers().get(i);
                int now = quantities[p][i];
                long before = costs.costAt(now);
                if (costs.supplier() != supplier) {
                    continue;
                }
                OptionalInt more = costs.leastWorth(before + most, now + costs.packSize());
                if (more.isPresent() && costs.costAt(more.getAsInt()) - before < least) {
                    least = costs.costAt(more.getAsInt()) - before;
                    part = p;
                    offer = i;
                    quantity = more.getAsInt();
                }
            }
        }
        if (part >= 0) {
            quantities[part][offer] = quantity;
        }
        return part >= 0;
    }

    private boolean padRest() {
        long now = market.valuesOf(quantities)[supplier];
        long open = market.minimums()[supplier] - now;
        return open <= 0 || new Padding(market, quantities, quantities, supplier, open).padOne();
    }

    /** The one offer that lifts the order by itself at least cost. */
    private @Nullable Raise findSingle() {
        Raise best = null;
        for (int p = 0; p < quantities.length; p++) {
            for (int i = 0; i < quantities[p].length; i++) {
                OfferCosts costs = market.parts().get(p).offers().get(i);
                if (costs.supplier() != supplier) {
                    continue;
                }
                int now = quantities[p][i];
                long before = costs.costAt(now);
                OptionalInt more = costs.leastWorth(before + lacking, now + costs.packSize());
                if (more.isPresent()) {
                    int adds = Math.toIntExact(costs.costAt(more.getAsInt()) - before);
                    if (best == null || adds < best.adds()[0]) {
                        best = new Raise(p, i, new int[] {more.getAsInt()}, new int[] {adds});
                    }
                }
            }
        }
        return best;
    }

    /** Whether several offers together come closer than {@code enough}. */
    private boolean padExactly(int enough) {
        List<Raise> raises = listRaises(enough);
        List<long[]> reached = new ArrayList<>();
        long[] sums = new long[enough / WORD + 1];
        sums[0] = 1;
        long steps = 0;
        int least = enough;
        for (Raise raise : raises) {
            reached.add(sums);
            sums = sums.clone();
            for (int add : raise.adds()) {
                orShifted(sums, reached.getLast(), add);
                steps += sums.length;
                if (steps > MOST_STEPS) {
                    isLeast = false;
                    break;
                }
            }
            least = firstFrom(sums, (int) lacking, enough);
            if (least == lacking || !isLeast) {
                break;
            }
        }
        if (least == enough) {
            return false;
        }
        buy(raises, reached, least);
        return true;
    }

    /** The finest first: they reach the most sums. */
    private List<Raise> listRaises(int most) {
        List<Raise> raises = new ArrayList<>();
        for (int p = 0; p < quantities.length; p++) {
            for (int i = 0; i < quantities[p].length; i++) {
                OfferCosts costs = market.parts().get(p).offers().get(i);
                if (costs.supplier() == supplier) {
                    addRaise(raises, p, i, costs, most);
                }
            }
        }
        raises.sort(Comparator.comparingInt(raise -> raise.adds()[0]));
        return raises;
    }

    private void addRaise(List<Raise> raises, int part, int offer, OfferCosts costs, int most) {
        int now = quantities[part][offer];
        int from = least[part][offer] == now ? now + costs.packSize() : least[part][offer];
        long before = costs.costAt(now);
        int[] to = new int[8];
        int[] adds = new int[8];
        int count = 0;
        for (OfferCosts.Stretch stretch : costs.stretches()) {
            int first = Math.max(stretch.first(), from);
            for (int q = first; q <= stretch.last(); q += costs.packSize()) {
                long add = costs.costAt(q) - before;
                if (add >= most || (stretch.exactPrice() == 0 && q > first)) {
                    break;
                }
                if (add > 0 && (count == 0 || add != adds[count - 1])) {
                    if (count == to.length) {
                        to = Arrays.copyOf(to, 2 * count);
                        adds = Arrays.copyOf(adds, 2 * count);
                    }
                    to[count] = q;
                    adds[count++] = (int) add;
                }
            }
        }
        if (count > 0) {
            raises.add(
                    new Raise(part, offer, Arrays.copyOf(to, count), Arrays.copyOf(adds, count)));
        }
    }

    private static void orShifted(long[] sums, long[] from, int by) {
        int skip = by / WORD;
        int bits = by % WORD;
        for (int w = 0; w + skip < sums.length; w++) {
            sums[w + skip] |= from[w] << bits;
            if (bits > 0 && w + skip + 1 < sums.length) {
                sums[w + skip + 1] |= from[w] >>> (WORD - bits);
            }
        }
    }

    private static int firstFrom(long[] sums, int from, int otherwise) {
        for (int sum = from; sum < otherwise; sum++) {
            if (has(sums, sum)) {
                return sum;
            }
        }
        return otherwise;
    }

    private static boolean has(long[] sums, int sum) {
        return (sums[sum / WORD] >>> (sum % WORD) & 1) != 0;
    }

    /** Goes back from the sum, offer by offer. */
    private void buy(List<Raise> raises, List<long[]> reached, int sum) {
        int open = sum;
        for (int r = reached.size() - 1; r >= 0 && open > 0; r--) {
            if (has(reached.get(r), open)) {
                continue;
            }
            Raise raise = raises.get(r);
            for (int a = 0; a < raise.adds().length; a++) {
                int before = open - raise.adds()[a];
                if (before >= 0 && has(reached.get(r), before)) {
                    quantities[raise.part()][raise.offer()] = raise.quantities()[a];
                    open = before;
                    break;
                }
            }
        }
    }
}
