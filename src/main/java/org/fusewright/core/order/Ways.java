package org.fusewright.core.order;

import org.fusewright.core.order.PartSupply.Choice;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The ways to buy each part that may belong to a cover within a limit, when some suppliers must be
 * ordered from: what each costs, and what of that counts towards which order. Parts with a single
 * such way are set aside at once; a part that has too many, as cheap ones do, stays open until less
 * room is left.
 *
 * <p>What an order lacks is taken to be bought for just that: ways that buy more than is needed
 * then add nothing, and the order is filled up in the end.
 */
final class Ways {

    private static final int FEW = 300;
    private static final int FIRST_SIZE = 8;
    private static final int STEPS_FOR_A_PART = 100;

    /** The known ways of one part. */
    private final class Known {

        private final PartSupply part;
        private final Map<List<Integer>, Integer> places = new HashMap<>();
        private final List<int[]> quantities = new ArrayList<>();
        private long[] costs = new long[FIRST_SIZE];
        private long[] values = new long[FIRST_SIZE * orders.length];

        private Known(PartSupply part) {
            this.part = part;
        }

        private int placeOf(int[] bought) {
            List<Integer> key = Arrays.stream(bought).boxed().toList();
            Integer known = places.get(key);
            if (known != null) {
                return known;
            }
            int place = quantities.size();
            places.put(key, place);
            quantities.add(bought);
            if (place == costs.length) {
                costs = Arrays.copyOf(costs, 2 * place);
                values = Arrays.copyOf(values, 2 * place * orders.length);
            }
            long[] all = new long[market.suppliers().size()];
            part.addValues(bought, all);
            costs[place] = Market.sum(all);
            for (int m = 0; m < orders.length; m++) {
                values[place * orders.length + m] = all[orders[m]];
            }
            return place;
        }
    }

    private final Market market;
    private final Budget budget;
    private final int[] orders;
    private final double[] undiscounted;
    private final long[] worth;
    private final int[][] settled;
    private final int[] places;
    private final List<Known> known = new ArrayList<>();
    private final List<int @Nullable []> first = new ArrayList<>();
    private final int[] cheapest;
    private final long[] minimums;
    private long settledCost;

    /**
     * @param forced the suppliers that must be ordered from
     * @param guide likewise a relaxation
     * @param limit nothing dearer is of interest
     */
    Ways(
            Market market,
            Relaxation relaxed,
            Relaxation guide,
            boolean[] forced,
            double limit,
            Budget budget) {
        this.market = market;
        this.budget = budget;
        orders = market.forcedMinimums(forced);
        undiscounted = relaxed.weights().clone();
        worth = new long[forced.length];
        for (int s : orders) {
            worth[s] = 1;
        }
        settled = guide.quantities();
        List<Integer> unsettled = new ArrayList<>();
        long[] sure = new long[forced.length];
        for (int p = 0; p < settled.length; p++) {
            PartSupply part = market.parts().get(p);
            if (Arrays.stream(orders).anyMatch(part::isOfferedBy)) {
                Known ways = new Known(part);
                int[] list = list(ways, guide, limit);
                if (list == null && guide != relaxed) {
                    list = list(ways, relaxed, limit);
                }
                if (list == null || list.length > 1) {
                    unsettled.add(p);
                    known.add(ways);
                    first.add(list);
                    continue;
                }
                settled[p] = ways.quantities.get(list[0]);
            }
            part.addValues(settled[p], sure);
        }
        settledCost = Market.sum(sure);
        places = unsettled.stream().mapToInt(p -> p).toArray();
        minimums =
                Arrays.stream(orders)
                        .mapToLong(s -> Math.max(0, market.minimums()[s] - sure[s]))
                        .toArray();
        cheapest = new int[places.length];
        Arrays.setAll(cheapest, p -> known.get(p).placeOf(settled[places[p]]));
    }

    private int @Nullable [] list(Known ways, Relaxation relaxed, double limit) {
        double[] weights = Arrays.stream(orders).mapToDouble(s -> relaxed.weights()[s]).toArray();
        return list(ways, weights, limit - relaxed.bound(), FEW);
    }

    /**
     * The ways of a part that cost at most so much more than the cheapest, at these weights of the
     * orders; rising.
     *
     * @return null when there are too many
     */
    int @Nullable [] list(int part, double[] weights, double room, int most) {
        return list(known.get(part), weights, room, most);
    }

    private int @Nullable [] list(Known ways, double[] weights, double room, int most) {
        double[] all = weightsOf(weights);
        budget.spend(STEPS_FOR_A_PART);
        Choice least = ways.part.findCheapest(all, budget);
        if (least == null) {
            throw new IllegalStateException("a part can no longer be covered");
        }
        Optional<List<Choice>> found =
                ways.part.listWays(all, least.weighted() + room, worth, most, budget);
        if (found.isEmpty()) {
            return null;
        }
        List<Choice> choices = new ArrayList<>(found.get());
        choices.add(least);
        return choices.stream()
                .mapToInt(choice -> ways.placeOf(choice.quantities()))
                .distinct()
                .sorted()
                .toArray();
    }

    /** The cheapest of all ways at these weights of the orders, whether known before or not. */
    int findCheapest(int part, double[] weights) {
        Known ways = known.get(part);
        Choice least = ways.part.findCheapest(weightsOf(weights), budget);
        return least == null ? cheapest[part] : ways.placeOf(least.quantities());
    }

    private double[] weightsOf(double[] weights) {
        double[] all = undiscounted.clone();
        for (int m = 0; m < orders.length; m++) {
            all[orders[m]] = weights[m];
        }
        return all;
    }

    /** How many parts have more than one way. */
    int parts() {
        return places.length;
    }

    /** The ways of each part that are within the limit; null for a part that has too many. */
    int[][] first() {
        return first.toArray(int[][]::new);
    }

    /** The cheapest way for each part at the discounts that the search starts from. */
    int[] cheapest() {
        return cheapest.clone();
    }

    /** All ways of a part that are known so far. */
    int countKnown(int part) {
        return known.get(part).quantities.size();
    }

    /** How many orders are counted. */
    int orders() {
        return orders.length;
    }

    /** What the parts with several ways must add to an order. */
    long minimum(int order) {
        return minimums[order];
    }

    /** What the parts with a single way cost. */
    long settledCost() {
        return settledCost;
    }

    long cost(int part, int way) {
        return known.get(part).costs[way];
    }

    long value(int part, int way, int order) {
        return known.get(part).values[way * orders.length + order];
    }

    /** What to buy of each offer of each part. */
    int[][] quantities(int[] chosen) {
        int[][] quantities = new int[settled.length][];
        for (int p = 0; p < settled.length; p++) {
            quantities[p] = settled[p].clone();
        }
        for (int p = 0; p < chosen.length; p++) {
            quantities[places[p]] = known.get(p).quantities.get(chosen[p]).clone();
        }
        return quantities;
    }
}
