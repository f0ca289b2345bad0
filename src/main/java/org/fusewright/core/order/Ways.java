package org.fusewright.core.order;

import org.fusewright.core.order.PartSupply.Choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The ways to buy each part that may belong to a cover within a limit, when some suppliers must be
 * ordered from: what each costs, and what of that counts towards which order. Of ways that give
 * each order the same, only the cheapest.
 *
 * <p>What an order lacks is, at first, taken to be bought for just that: ways that buy more than is
 * needed then add nothing, and the order is filled up in the end.
 */
final class Ways {

    /**
     * @param cost in minor units
     * @param values what of it goes to each order
     */
    private record Way(int[] quantities, long cost, long[] values) {}

    private static final int MOST_ATTEMPTS = 12;
    private static final int STEPS_FOR_A_PART = 100;

    private final Market market;
    private final List<Integer> orders = new ArrayList<>();
    private final boolean filling;
    private final long[] minimums;
    private final List<List<Way>> ways = new ArrayList<>();
    private final long[][] costs;
    private final long[][] values;
    private double givenUp = Double.POSITIVE_INFINITY;

    /**
     * @param forced the suppliers that must be ordered from
     * @param limit nothing dearer is of interest
     * @param most ways of a part; where there are more, the limit is lowered
     * @param filling whether orders are filled up in the end, not by more of the parts
     */
    Ways(
            Market market,
            Relaxation relaxed,
            boolean[] forced,
            double limit,
            int most,
            boolean filling,
            Budget budget) {
        this.market = market;
        this.filling = filling;
        for (int s = 0; s < forced.length; s++) {
            if (forced[s] && market.minimums()[s] > 0) {
                orders.add(s);
            }
        }
        minimums = orders.stream().mapToLong(s -> market.minimums()[s]).toArray();
        long[] worth = new long[forced.length];
        orders.forEach(s -> worth[s] = filling ? 1 : market.minimums()[s]);
        for (int p = 0; p < market.parts().size(); p++) {
            PartSupply part = market.parts().get(p);
            Choice cheapest = relaxed.choices()[p];
            List<Choice> found =
                    orders.stream().anyMatch(part::isOfferedBy)
                            ? list(part, cheapest, relaxed, limit, most, worth, budget)
                            : List.of(cheapest);
            ways.add(cheapestByValues(part, found));
        }
        costs = new long[ways.size()][];
        values = new long[ways.size()][];
        for (int p = 0; p < costs.length; p++) {
            costs[p] = ways.get(p).stream().mapToLong(Way::cost).toArray();
            values[p] =
                    ways.get(p).stream().flatMapToLong(w -> Arrays.stream(w.values())).toArray();
        }
    }

    /** All ways within the limit, or within a lower one when those are too many. */
    private List<Choice> list(
            PartSupply part,
            Choice cheapest,
            Relaxation relaxed,
            double limit,
            int most,
            long[] worth,
            Budget budget) {
        double room = limit - relaxed.bound();
        budget.spend(STEPS_FOR_A_PART);
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            Optional<List<Choice>> found =
                    part.listWays(
                            relaxed.weights(), cheapest.weighted() + room, worth, most, budget);
            if (found.isPresent()) {
                List<Choice> all = new ArrayList<>(found.get());
                all.add(cheapest);
                return all;
            }
            room /= 3;
            givenUp = Math.min(givenUp, relaxed.bound() + room);
        }
        givenUp = relaxed.bound();
        List<Choice> singles = part.listSingles(relaxed.weights());
        singles.add(cheapest);
        return singles;
    }

    private List<Way> cheapestByValues(PartSupply part, List<Choice> choices) {
        Map<List<Long>, Way> byValues = new HashMap<>();
        for (Choice choice : choices) {
            long[] all = new long[market.suppliers().size()];
            part.addValues(choice.quantities(), all);
            long cost = Market.sum(all);
            long[] values = orders.stream().mapToLong(s -> all[s]).toArray();
            byValues.merge(
                    Arrays.stream(values).boxed().toList(),
                    new Way(choice.quantities(), cost, values),
                    (a, b) -> b.cost() < a.cost() ? b : a);
        }
        return byValues.values().stream()
                .sorted(
                        Comparator.comparingLong(Way::cost)
                                .thenComparing(Way::values, Arrays::compare))
                .toList();
    }

    int parts() {
        return ways.size();
    }

    int count(int part) {
        return ways.get(part).size();
    }

    /** How many orders are counted. */
    int orders() {
        return minimums.length;
    }

    long minimum(int order) {
        return minimums[order];
    }

    /** Whether what an order lacks may be taken to cost just that. */
    boolean isFilling() {
        return filling;
    }

    /** Ways were left out that may belong to covers of this cost and above. */
    double givenUp() {
        return givenUp;
    }

    long cost(int part, int way) {
        return costs[part][way];
    }

    long value(int part, int way, int order) {
        return values[part][way * minimums.length + order];
    }

    /** What to buy of each offer of each part. */
    int[][] quantities(int[] chosen) {
        int[][] quantities = new int[chosen.length][];
        for (int p = 0; p < chosen.length; p++) {
            quantities[p] = ways.get(p).get(chosen[p]).quantities().clone();
        }
        return quantities;
    }
}
