package org.fusewright.core.order;

import org.fusewright.core.order.OfferCosts.Stretch;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One needed part and the offers for it. Finds the cheapest way to cover the need when the money
 * spent at each supplier is weighted, and all ways within a limit. Exact: what is cut off is shown
 * to cost more by a bound that lets every rest be bought at the best price it could reach, less
 * half a minor unit for the rounding of each line.
 */
final class PartSupply {

    /** How much of each offer is bought, and what that costs when weighted. */
    record Choice(int[] quantities, double weighted) {

        private Choice backFrom(int[] order) {
            int[] back = new int[order.length];
            for (int i = 0; i < order.length; i++) {
                back[order[i]] = quantities[i];
            }
            return new Choice(back, weighted);
        }
    }

    /** A price, and the least quantity that it is given for. */
    private record Reach(double price, int first) {}

    private static final double TINY = 1e-7;
    private static final int STEPS_FOR_A_WAY = 100;

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

    private PartSupply(List<OfferCosts> sorted, int need) {
        this.need = need;
        this.offers = sorted;
    }

    int need() {
        return need;
    }

    List<OfferCosts> offers() {
        return offers;
    }

    boolean isOfferedBy(int supplier) {
        for (OfferCosts offer : offers) {
            if (offer.supplier() == supplier) {
                return true;
            }
        }
        return false;
    }

    boolean uses(int supplier, int[] quantities) {
        for (int i = 0; i < quantities.length; i++) {
            if (quantities[i] > 0 && offers.get(i).supplier() == supplier) {
                return true;
            }
        }
        return false;
    }

    /** Adds what the quantities cost to the values by supplier. */
    void addValues(int[] quantities, long[] values) {
        for (int i = 0; i < quantities.length; i++) {
            if (quantities[i] > 0) {
                values[offers.get(i).supplier()] += offers.get(i).costAt(quantities[i]);
            }
        }
    }

    /**
     * The cheapest cover; the first of equal ones.
     *
     * @param weights by supplier, 0 to 1; infinite where nothing is to be bought
     * @return null when the suppliers left cannot cover the need
     */
    @Nullable Choice findCheapest(double[] weights, Budget budget) {
        return new Search(weights, budget).findCheapest();
    }

    /**
     * All ways whose weighted cost is at most {@code limit}, by what they buy at the suppliers with
     * a worth; what is open then is bought elsewhere at least cost.
     *
     * @param worth by supplier, what its order is to be filled up to; 0 where that does not matter
     * @return empty when there are more than {@code most}, or they take too long to find
     */
    Optional<List<Choice>> listWays(
            double[] weights, double limit, long[] worth, int most, Budget budget) {
        Comparator<Integer> countedFirst =
                Comparator.comparing(i -> worth[offers.get(i).supplier()] == 0);
        int[] order =
                IntStream.range(0, offers.size())
                        .boxed()
                        .sorted(countedFirst)
                        .mapToInt(i -> i)
                        .toArray();
        List<OfferCosts> sorted = IntStream.of(order).mapToObj(offers::get).toList();
        return new PartSupply(sorted, need).new Search(weights, budget)
                .collect(limit, worth, most)
                .map(ways -> ways.stream().map(way -> way.backFrom(order)).toList());
    }

    private @Nullable Choice findCheapest(int open, double[] weights, Budget budget) {
        return open == 0
                ? new Choice(new int[offers.size()], 0)
                : new PartSupply(offers, open).findCheapest(weights, budget);
    }

    private final class Search {

        private final double[] weights;
        private final Budget budget;
        private final double[] weightOf = new double[offers.size()];
        private final Reach[][] reaches = new Reach[offers.size() + 1][];
        private final double[] slack = new double[offers.size() + 1];
        private final int[] quantities = new int[offers.size()];
        private int[] best = new int[0];
        private double bestCost = Double.POSITIVE_INFINITY;

        private double limit;
        private long[] worth = new long[0];
        private int counted;
        private long stepsLeft;
        private int most;
        private final List<Choice> found = new ArrayList<>();
        private final Map<Integer, Optional<Choice>> rests = new HashMap<>();

        Search(double[] weights, Budget budget) {
            this.weights = weights;
            this.budget = budget;
            for (int i = offers.size() - 1; i >= 0; i--) {
                weightOf[i] = weights[offers.get(i).supplier()];
                slack[i] = slack[i + 1] + (isOpen(i) ? weightOf[i] / 2 : 0);
            }
        }

        private boolean isOpen(int i) {
            return weightOf[i] < Double.POSITIVE_INFINITY;
        }

        /** For the offers from each on, the prices that no other beats on any quantity. */
        private void readyReaches() {
            reaches[offers.size()] = new Reach[0];
            for (int i = offers.size() - 1; i >= 0; i--) {
                reaches[i] =
                        isOpen(i)
                                ? envelope(reaches[i + 1], offers.get(i), weightOf[i])
                                : reaches[i + 1];
            }
        }

        private static Reach[] envelope(Reach[] later, OfferCosts offer, double weight) {
            List<Reach> all = new ArrayList<>(List.of(later));
            for (Stretch stretch : offer.stretches()) {
                all.add(new Reach(stretch.exactPrice() * weight, stretch.first()));
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
            double floor = Double.POSITIVE_INFINITY;
            for (int i = 0; i < offers.size(); i++) {
                if (isOpen(i)) {
                    coverBy(i, need, 0);
                    for (Stretch stretch : offers.get(i).stretches()) {
                        double reached = Math.max(need, stretch.first());
                        floor = Math.min(floor, weightOf[i] * stretch.exactPrice() * reached);
                    }
                }
            }
            budget.spend(4L * offers.size());
            if (floor - slack[0] < bestCost - TINY) {
                readyReaches();
                mix(0, need, 0);
            }
            return isFound() ? new Choice(best, bestCost) : null;
        }

        private boolean isFound() {
            return bestCost < Double.POSITIVE_INFINITY;
        }

        /** Buys all that is open of one offer: as little as it takes, or up to a price break. */
        private void coverBy(int i, int open, double spent) {
            OfferCosts offer = offers.get(i);
            int exact = offer.packsUp(open);
            tryOut(i, exact, spent);
            for (Stretch stretch : offer.stretches()) {
                if (stretch.first() > exact) {
                    tryOut(i, stretch.first(), spent);
                }
            }
        }

        private void tryOut(int i, int quantity, double spent) {
            double cost = spent + weightOf[i] * offers.get(i).costAt(quantity);
            if (cost < bestCost - TINY) {
                bestCost = cost;
                best = quantities.clone();
                best[i] = quantity;
            }
        }

        /** Tries the offers from {@code i} on for what is open yet, some of several of them. */
        private void mix(int i, int open, double spent) {
            if (i == offers.size() || spent + floor(i, open) >= bestCost - TINY) {
                return;
            }
            mix(i + 1, open, spent);
            if (!isOpen(i)) {
                return;
            }
            coverBy(i, open, spent);
            for (Stretch stretch : offers.get(i).stretches()) {
                mixWithin(i, stretch, open, spent);
            }
            quantities[i] = 0;
        }

        private void mixWithin(int i, Stretch stretch, int open, double spent) {
            int last = Math.min(stretch.last(), open - 1);
            if (stretch.first() > last || !canPay(i, stretch, last, open, spent)) {
                return;
            }
            int pack = offers.get(i).packSize();
            budget.spend((last - stretch.first()) / pack + 1);
            for (int q = stretch.first(); q <= last; q += pack) {
                double cost = spent + weightOf[i] * stretch.price().extend(q);
                if (cost + floor(i + 1, open - q) < bestCost - TINY) {
                    quantities[i] = q;
                    mix(i + 1, open - q, cost);
                }
            }
        }

        /** Whether some of the stretch and the rest at the best price within reach could pay. */
        private boolean canPay(int i, Stretch stretch, int last, int open, double spent) {
            double price = weightOf[i] * stretch.exactPrice();
            double room = bestCost - spent + slack[i];
            double rest = Double.POSITIVE_INFINITY;
            for (Reach reach : reaches[i + 1]) {
                if (price * stretch.first() + reach.price() * reach.first() < room) {
                    rest = Math.min(rest, reach.price());
                }
            }
            return price * stretch.first() + rest * (open - stretch.first()) < room
                    || price * last + rest * (open - last) < room;
        }

        /** The offers that count come first. */
        Optional<List<Choice>> collect(double within, long[] fillUp, int atMost) {
            limit = within + TINY;
            worth = fillUp;
            most = atMost;
            stepsLeft = (long) STEPS_FOR_A_WAY * atMost;
            while (counted < offers.size() && worth[offers.get(counted).supplier()] > 0) {
                counted++;
            }
            readyReaches();
            collect(0, need, 0);
            return isTooMuch() ? Optional.empty() : Optional.of(found);
        }

        private boolean isTooMuch() {
            return found.size() > most || stepsLeft < 0;
        }

        private void collect(int i, int open, double spent) {
            if (isTooMuch() || spent + floor(i, open) > limit) {
                return;
            }
            if (i == counted) {
                finish(Math.max(0, open), spent);
                return;
            }
            collect(i + 1, open, spent);
            if (isOpen(i)) {
                for (Stretch stretch : offers.get(i).stretches()) {
                    collectWithin(i, stretch, open, spent);
                }
                quantities[i] = 0;
            }
        }

        private void finish(int open, double spent) {
            Optional<Choice> rest =
                    rests.computeIfAbsent(
                            open,
                            left ->
                                    Optional.ofNullable(
                                            others().findCheapest(left, weights, budget)));
            if (rest.isPresent() && spent + rest.get().weighted() <= limit) {
                int[] all = quantities.clone();
                int[] others = rest.get().quantities();
                System.arraycopy(others, 0, all, counted, others.length);
                found.add(new Choice(all, spent + rest.get().weighted()));
            }
        }

        private PartSupply others() {
            return new PartSupply(offers.subList(counted, offers.size()), need);
        }

        private void collectWithin(int i, Stretch stretch, int open, double spent) {
            OfferCosts offer = offers.get(i);
            int last = lastUseful(offer, stretch, open);
            double price = weightOf[i] * stretch.exactPrice();
            if (price > 0) {
                double affordable = (limit - spent + weightOf[i] / 2 + TINY) / price;
                last = (int) Math.min(last, affordable);
            }
            for (int q = stretch.first(); q <= last && !isTooMuch(); q += offer.packSize()) {
                budget.spend(1);
                stepsLeft--;
                quantities[i] = q;
                collect(i + 1, open - q, spent + weightOf[i] * stretch.price().extend(q));
            }
        }

        /** More than this neither covers anything, nor fills up an order, nor lowers the price. */
        private int lastUseful(OfferCosts offer, Stretch stretch, int open) {
            int covering = open <= 0 ? 0 : Math.max(offer.packsUp(open), stretch.first());
            int worthIt = offer.leastWorth(worth[offer.supplier()], stretch.first()).orElse(0);
            int filling = Math.max(stretch.first(), worthIt);
            return Math.min(stretch.last(), Math.max(covering, filling));
        }
    }
}
