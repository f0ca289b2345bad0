package org.fusewright.core.order;

import org.fusewright.core.order.PartSupply.Choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Covers each part by itself while money spent at a supplier that must be ordered from counts less:
 * the discount that makes its order reach the minimum (Lagrangian relaxation). The sum, with the
 * discounts paid back on the minimums, bounds every cover from below: since no discount is more
 * than the whole price, buying more than needed never lowers it. The best discounts come from a
 * {@link Mixture} of the covers found on the way.
 */
final class Relaxation {

    private static final int MOST_ROUNDS = 80;
    private static final int STEPS_FOR_A_PART = 20;
    private static final double TINY = 1e-6;

    private final Market market;
    private final boolean[] out;
    private final boolean[] forced;
    private final int[] rows;
    private final int[] discounted;
    private final Budget budget;
    private final double leastWeight;
    private final List<long[]> covers;
    private double[] weights;
    private Choice[] choices;
    private double bound;

    private Relaxation(
            Market market,
            boolean[] out,
            boolean[] forced,
            Choice[] undiscounted,
            double leastWeight,
            List<long[]> known,
            Budget budget) {
        this.leastWeight = leastWeight;
        this.covers = new ArrayList<>(known);
        this.market = market;
        this.out = out;
        this.forced = forced;
        this.weights = weightsWithout(out);
        this.choices = undiscounted;
        this.budget = budget;
        rows = market.forcedMinimums(forced);
        discounted =
                IntStream.range(0, market.parts().size())
                        .filter(
                                p ->
                                        Arrays.stream(rows)
                                                .anyMatch(market.parts().get(p)::isOfferedBy))
                        .toArray();
        this.bound = boundOf(weights, choices);
    }

    /** Full price everywhere, and infinite where nothing may be bought. */
    static double[] weightsWithout(boolean[] out) {
        double[] weights = new double[out.length];
        for (int s = 0; s < out.length; s++) {
            weights[s] = out[s] ? Double.POSITIVE_INFINITY : 1;
        }
        return weights;
    }

    /**
     * @param undiscounted the cheapest choice for each part without the suppliers that are out
     * @param known what covers without the suppliers that are out are worth at each supplier
     * @param enough a bound from which on nothing is to be gained
     */
    static Relaxation of(
            Market market,
            boolean[] out,
            boolean[] forced,
            Choice[] undiscounted,
            List<long[]> known,
            double enough,
            Budget budget) {
        Relaxation relaxation =
                new Relaxation(
                        market, out, forced, undiscounted, Mixture.LEAST_WEIGHT, known, budget);
        relaxation.raiseDiscounts(enough);
        return relaxation;
    }

    /** The same with {@link Discounts#guiding} discounts. */
    Relaxation guiding(Choice[] undiscounted) {
        if (Arrays.stream(weights).allMatch(weight -> weight >= Mixture.HARDLY_COUNTS)) {
            return this;
        }
        Relaxation relaxation =
                new Relaxation(
                        market, out, forced, undiscounted, Mixture.GUIDING_WEIGHT, covers, budget);
        relaxation.raiseDiscounts(Double.POSITIVE_INFINITY);
        return relaxation;
    }

    private void raiseDiscounts(double enough) {
        if (rows.length == 0) {
            return;
        }
        long[] values = market.valuesOf(quantities());
        Mixture mixture = new Mixture(restOf(values), overOf(values), leastWeight);
        covers.forEach(cover -> mixture.add(restOf(cover), overOf(cover)));
        covers.add(values);
        double base = Arrays.stream(rows).mapToLong(s -> market.minimums()[s]).sum();
        Choice[] last = choices;
        for (int round = 0; round < MOST_ROUNDS && bound < enough; round++) {
            if (mixture.cost() + base < bound + TINY) {
                break;
            }
            double[] next = weightsWithout(out);
            double[] mixed = mixture.weights();
            for (int r = 0; r < rows.length; r++) {
                next[rows[r]] = mixed[r];
            }
            last = choose(next, last);
            double found = boundOf(next, last);
            if (found > bound) {
                bound = found;
                weights = next;
                choices = last;
            }
            values = market.valuesOf(quantitiesOf(last));
            covers.add(values);
            if (!mixture.add(restOf(values), overOf(values))) {
                break;
            }
        }
    }

    /** What is spent at suppliers without a minimum to reach. */
    private double restOf(long[] values) {
        double rest = Market.sum(values);
        for (int s : rows) {
            rest -= values[s];
        }
        return rest;
    }

    private double[] overOf(long[] values) {
        return Arrays.stream(rows).mapToDouble(s -> values[s] - market.minimums()[s]).toArray();
    }

    private Choice[] choose(double[] next, Choice[] last) {
        Choice[] chosen = last.clone();
        budget.spend((long) STEPS_FOR_A_PART * chosen.length);
        for (int p : discounted) {
            Choice found = market.parts().get(p).findCheapest(next, budget);
            if (found != null) {
                chosen[p] = found;
            }
        }
        return chosen;
    }

    private double boundOf(double[] at, Choice[] chosen) {
        double sum = 0;
        for (Choice choice : chosen) {
            sum += choice.weighted();
        }
        for (int s : rows) {
            sum += (1 - at[s]) * market.minimums()[s];
        }
        return sum;
    }

    /** No cover that orders from these suppliers what they ask for costs less. */
    double bound() {
        return bound;
    }

    double[] weights() {
        return weights;
    }

    /** What the covers that were looked at are worth at each supplier. */
    List<long[]> covers() {
        return covers;
    }

    Choice[] choices() {
        return choices;
    }

    int[][] quantities() {
        return quantitiesOf(choices);
    }

    static int[][] quantitiesOf(Choice[] choices) {
        int[][] quantities = new int[choices.length][];
        for (int p = 0; p < quantities.length; p++) {
            quantities[p] = choices[p].quantities().clone();
        }
        return quantities;
    }
}
