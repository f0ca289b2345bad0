package org.fusewright.core.order;

import org.fusewright.core.order.OfferCosts.Stretch;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One needed part and the offers for it. Finds the cheapest way to cover the need when the money
 * spent at each supplier is weighted, and all ways within a limit. Exact: what is cut off is shown
 * to cost more by a bound that lets every rest be bought at the best price it could reach, less
 * half a minor unit for the rounding of each line.
 */
final class PartSupply {

    /** How much of each offer is bought, and what that costs at each supplier. */
    record Choice(int[] quantities, double weighted) {}

    /** A price, and the least quantity that it is given for. */
    private record Reach(double price, int first) {}

    private static final double TINY = 1e-7;

    private final int need;
    private final List<OfferCosts> offers;

    /** Large packs come first, so that the last offer, bought singly, fills what is open. */
    PartSupply(int need, List<OfferCosts> offers) {
        this.need = need;
        this.offers =
                offers.stream()
                        .sorted(Comparator.comparingInt(OfferCosts::packSize).reversed())
                        .toList();
    }

    int need() {
        return need;
    }

    List<OfferCosts> offers() {
        return offers;
    }

    boolean isOfferedBy(int supplier) {
        return offers.stream().anyMatch(offer -> offer.supplier() == supplier);
    }

    /** Adds what the quantities cost to the values by supplier. */
    void addValues(int[] quantities, long[] values) {
        for (int i = 0; i < quantities.length; i++) {
            if (quantities[i] > 0) {
                values[offers.get(i).supplier()] += offers.get(i).costAt(quantities[i]);
            }
        }
    }

    boolean uses(int supplier, int[] quantities) {
        return IntStream.range(0, quantities.length)
                .anyMatch(i -> quantities[i] > 0 && offers.get(i).supplier() == supplier);
    }

    long valueAt(int supplier, int[] quantities) {
        long value = 0;
        for (int i = 0; i < quantities.length; i++) {
            if (quantities[i] > 0 && offers.get(i).supplier() == supplier) {
                value += offers.get(i).costAt(quantities[i]);
            }
        }
        return value;
    }

    double weigh(int[] quantities, double[] weights) {
        double sum = 0;
        for (int i = 0; i < quantities.length; i++) {
            if (quantities[i] > 0) {
                OfferCosts offer = offers.get(i);
                sum += weights[offer.supplier()] * offer.costAt(quantities[i]);
            }
        }
        return sum;
    }

    /**
     * The cheapest cover; the first of equal ones.
     *
     * @param weights by supplier, 0 to 1; infinite where it is not to be used
     * @return null when the suppliers left cannot cover the need
     */
    @Nullable Choice findCheapest(double[] weights) {
        Search search = new Search(weights);
        return search.findCheapest();
    }

    /**
     * All ways whose weighted cost is at most {@code limit}, and which are not worse in every
     * respect than another one.
     *
     * @param worth by supplier, how much more than needed may be bought there to fill up an order
     * @param most after so many ways it stops
     */
    Ways listWays(double[] weights, double limit, long[] worth, int most) {
        Search search = new Search(weights);
        return search.listWays(limit, worth, most);
    }

    /**
     * @param complete whether none was left out
     */
    record Ways(List<Choice> choices, boolean complete) {}

    private final class Search {

        private final double[] weightOf = new double[offers.size()];
        private final Reach[][] reaches = new Reach[offers.size() + 1][];
        private final double[] slack = new double[offers.size() + 1];
        private final int[] quantities = new int[offers.size()];
        private int[] best = new int[0];
        private double bestCost = Double.POSITIVE_INFINITY;

        Search(double[] weights) {
            reaches[offers.size()] = new Reach[0];
            for (int i = offers.size() - 1; i >= 0; i--) {
                OfferCosts offer = offers.get(i);
                weightOf[i] = weights[offer.supplier()];
                boolean open = Double.isFinite(weightOf[i]);
                reaches[i] = open ? envelope(reaches[i + 1], offer, weightOf[i]) : reaches[i + 1];
                slack[i] = slack[i + 1] + (open ? weightOf[i] / 2 : 0);
            }
        }

        /** The reaches that no other one beats both in price and in how early it is given. */
        private static Reach[] envelope(Reach[] later, OfferCosts offer, double weight) {
            List<Reach> all = new ArrayList<>(List.of(later));
            for (Stretch stretch : offer.stretches()) {
                all.add(new Reach(stretch.price().exact() * weight, stretch.first()));
            }
            all.sort(Comparator.comparingInt(Reach::first).thenComparingDouble(Reach::price));
            List<Reach> kept = new ArrayList<>();
            for (Reach reach : all) {
                if (kept.isEmpty() || reach.price() < kept.getLast().price()) {
                    kept.add(reach);
                }
            }
            return kept.toArray(Reach[]::new);
        }

        /** No way to have so many from the offers from {@code i} on costs less. */
        private double floor(int i, int open) {
            if (open <= 0) {
                return 0;
            }
            double least = Double.POSITIVE_INFINITY;
            for (Reach reach : reaches[i]) {
                least = Math.min(least, reach.price() * Math.max(open, reach.first()));
            }
            return least - slack[i];
        }

        @Nullable Choice findCheapest() {
            for (int i = 0; i < offers.size(); i++) {
                if (Double.isFinite(weightOf[i])) {
                    coverBy(i, need, 0);
                }
            }
            mix(0, need, 0);
            return Double.isFinite(bestCost) ? new Choice(best, bestCost) : null;
        }

        private void coverBy(int i, int open, double spent) {
            for (int quantity : offers.get(i).leastCovering(open)) {
                double cost = spent + weightOf[i] * offers.get(i).costAt(quantity);
                if (cost < bestCost - TINY) {
                    bestCost = cost;
                    quantities[i] = quantity;
                    best = quantities.clone();
                    quantities[i] = 0;
                }
            }
        }

        /** Tries the offers from {@code i} on for what is open yet, some of several of them. */
        private void mix(int i, int open, double spent) {
            if (i == offers.size() || spent + floor(i, open) >= bestCost - TINY) {
                return;
            }
            if (!Double.isFinite(weightOf[i])) {
                mix(i + 1, open, spent);
                return;
            }
            coverBy(i, open, spent);
            OfferCosts offer = offers.get(i);
            mix(i + 1, open, spent);
            for (int q = offer.packSize(); q < open; q += offer.packSize()) {
                double cost = spent + weightOf[i] * offer.costAt(q);
                if (cost + floor(i + 1, open - q) < bestCost - TINY) {
                    quantities[i] = q;
                    mix(i + 1, open - q, cost);
                }
            }
            quantities[i] = 0;
        }

        Ways listWays(double limit, long[] worth, int most) {
            List<Choice> found = new ArrayList<>();
            boolean complete = collect(0, need, 0, limit, worth, most, found);
            return new Ways(found, complete);
        }

        private boolean collect(
                int i,
                int open,
                double spent,
                double limit,
                long[] worth,
                int most,
                List<Choice> found) {
            if (spent + floor(i, open) > limit + TINY) {
                return true;
            }
            if (i == offers.size()) {
                if (open <= 0) {
                    if (found.size() == most) {
                        return false;
                    }
                    found.add(new Choice(quantities.clone(), spent));
                }
                return true;
            }
            boolean complete = collect(i + 1, open, spent, limit, worth, most, found);
            if (!Double.isFinite(weightOf[i])) {
                return complete;
            }
            for (int q : quantitiesOf(offers.get(i), Math.max(open, 0), worth)) {
                quantities[i] = q;
                double cost = spent + weightOf[i] * offers.get(i).costAt(q);
                complete &= collect(i + 1, open - q, cost, limit, worth, most, found);
                if (found.size() == most && !complete) {
                    break;
                }
            }
            quantities[i] = 0;
            return complete;
        }

        /** All quantities that could be bought beside others, to cover or to fill up an order. */
        private static int[] quantitiesOf(OfferCosts offer, int open, long[] worth) {
            int pack = offer.packSize();
            int[] covering = open == 0 ? new int[0] : offer.leastCovering(open);
            long more = worth[offer.supplier()];
            if (more == 0) {
                IntStream partial = IntStream.rangeClosed(1, (open - 1) / pack).map(n -> n * pack);
                return IntStream.concat(partial, IntStream.of(covering)).toArray();
            }
            int last = IntStream.of(covering).max().orElse(0);
            last = Math.max(last, offer.leastWorth(more, offer.lastChange()).orElse(last));
            return IntStream.rangeClosed(1, last / pack).map(n -> n * pack).toArray();
        }
    }
}
