package org.fusewright.core.order;

import org.fusewright.core.order.PartSupply.Choice;
import org.jspecify.annotations.Nullable;

import java.util.Arrays;

/**
 * Covers each part by itself while money spent at a supplier that must be ordered from counts less:
 * the discount that makes its order reach the minimum (Lagrangian relaxation). The sum, with the
 * discounts paid back on the minimums, bounds every cover from below: since no discount is more
 * than the whole price, buying more than needed never lowers it.
 */
final class Relaxation {

    private static final int MOST_ROUNDS = 4;
    private static final int MOST_STEPS = 60;
    private static final int EVALUATIONS = 10_000;
    private static final double TINY = 1e-7;

    private final Market market;
    private final boolean[] forced;
    private final double[] weights;
    private final Choice[] choices;
    private final Budget budget;

    private Relaxation(
            Market market, boolean[] out, boolean[] forced, Choice[] undiscounted, Budget budget) {
        this.market = market;
        this.forced = forced;
        this.weights = weightsWithout(out);
        this.choices = undiscounted.clone();
        this.budget = budget;
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
     * @param bestCost of a known cover; how far the bound could rise
     */
    static Relaxation of(
            Market market,
            boolean[] out,
            boolean[] forced,
            Choice[] undiscounted,
            long bestCost,
            Budget budget) {
        Relaxation relaxation = new Relaxation(market, out, forced, undiscounted, budget);
        relaxation.raiseDiscounts(bestCost);
        return relaxation;
    }

    private void raiseDiscounts(long bestCost) {
        int suppliers = 0;
        for (boolean must : forced) {
            suppliers += must ? 1 : 0;
        }
        raiseOneByOne(suppliers > 1 ? MOST_ROUNDS : suppliers);
        if (suppliers > 1 && bestCost < Long.MAX_VALUE) {
            raiseTogether(bestCost);
        }
    }

    private void raiseOneByOne(int rounds) {
        double before = bound();
        for (int round = 0; round < rounds; round++) {
            for (int s = 0; s < forced.length; s++) {
                if (forced[s]) {
                    raise(s);
                }
            }
            double after = bound();
            if (after < before + TINY) {
                break;
            }
            before = after;
        }
    }

    /**
     * One by one the discounts can get stuck. Goes on in the direction of what the orders lack, by
     * Polyak's step towards the best known cost, and keeps the best.
     */
    private void raiseTogether(long bestCost) {
        double[] kept = weights.clone();
        Choice[] keptChoices = choices.clone();
        double keptBound = bound();
        int steps = Math.clamp(EVALUATIONS / choices.length, 4, MOST_STEPS);
        for (int step = 0; step < steps && bound() < bestCost; step++) {
            long[] values = market.valuesOf(quantities());
            double square = 0;
            for (int s = 0; s < forced.length; s++) {
                double lacks = forced[s] ? market.minimums()[s] - values[s] : 0;
                square += lacks * lacks;
            }
            if (square == 0) {
                break;
            }
            double stride = (bestCost - bound()) / square;
            for (int s = 0; s < forced.length; s++) {
                if (forced[s]) {
                    double lacks = market.minimums()[s] - values[s];
                    weights[s] = Math.clamp(weights[s] - stride * lacks, 0, 1);
                }
            }
            chooseAnew();
            if (bound() > keptBound) {
                keptBound = bound();
                System.arraycopy(weights, 0, kept, 0, kept.length);
                System.arraycopy(choices, 0, keptChoices, 0, keptChoices.length);
            }
        }
        System.arraycopy(kept, 0, weights, 0, kept.length);
        System.arraycopy(keptChoices, 0, choices, 0, keptChoices.length);
    }

    private void chooseAnew() {
        for (int p = 0; p < choices.length; p++) {
            Choice found = market.parts().get(p).findCheapest(weights, budget);
            if (found != null) {
                choices[p] = found;
            }
        }
    }

    /** Finds the discount of one supplier that is best beside those of the others. */
    private void raise(int supplier) {
        long minimum = market.minimums()[supplier];
        Choice[] low = chooseAt(supplier, 1, null, null);
        double lowValue = valueAt(supplier, low);
        if (lowValue >= minimum) {
            keep(supplier, 1, low);
            return;
        }
        Choice[] high = chooseAt(supplier, 0, null, null);
        double highValue = valueAt(supplier, high);
        if (highValue < minimum) {
            keep(supplier, 0, high);
            return;
        }
        double weight = 0;
        for (int step = 0; step < MOST_STEPS; step++) {
            double lowElsewhere = elsewhere(supplier, low);
            double highElsewhere = elsewhere(supplier, high);
            weight = (lowElsewhere - highElsewhere) / (highValue - lowValue);
            weight = Math.clamp(weight, 0, 1);
            Choice[] middle = chooseAt(supplier, weight, low, high);
            double middleValue = valueAt(supplier, middle);
            double middleCost = elsewhere(supplier, middle) + weight * middleValue;
            if (middleCost >= highElsewhere + weight * highValue - TINY) {
                break;
            }
            if (middleValue >= minimum) {
                high = middle;
                highValue = middleValue;
            } else {
                low = middle;
                lowValue = middleValue;
            }
        }
        keep(supplier, weight, high);
    }

    /** The choices at one weight; where those at a lower and a higher one agree, they stay. */
    private Choice[] chooseAt(
            int supplier, double weight, Choice @Nullable [] low, Choice @Nullable [] high) {
        double kept = weights[supplier];
        weights[supplier] = weight;
        Choice[] chosen = choices.clone();
        budget.spend(chosen.length);
        for (int p = 0; p < chosen.length; p++) {
            PartSupply part = market.parts().get(p);
            if (!part.isOfferedBy(supplier)) {
                continue;
            }
            boolean known =
                    low != null
                            && high != null
                            && Arrays.equals(low[p].quantities(), high[p].quantities());
            Choice found = known ? low[p] : part.findCheapest(weights, budget);
            if (found != null) {
                chosen[p] = found;
            }
        }
        weights[supplier] = kept;
        return chosen;
    }

    private double valueAt(int supplier, Choice[] chosen) {
        double value = 0;
        for (int p = 0; p < chosen.length; p++) {
            if (market.parts().get(p).isOfferedBy(supplier)) {
                value += market.parts().get(p).valueAt(supplier, chosen[p].quantities());
            }
        }
        return value;
    }

    /** What the choices cost, weighted, at all suppliers but this one. */
    private double elsewhere(int supplier, Choice[] chosen) {
        double kept = weights[supplier];
        weights[supplier] = 0;
        double cost = 0;
        for (int p = 0; p < chosen.length; p++) {
            if (market.parts().get(p).isOfferedBy(supplier)) {
                cost += market.parts().get(p).weigh(chosen[p].quantities(), weights);
            }
        }
        weights[supplier] = kept;
        return cost;
    }

    private void keep(int supplier, double weight, Choice[] chosen) {
        weights[supplier] = weight;
        for (int p = 0; p < chosen.length; p++) {
            if (market.parts().get(p).isOfferedBy(supplier)) {
                int[] quantities = chosen[p].quantities();
                choices[p] =
                        new Choice(quantities, market.parts().get(p).weigh(quantities, weights));
            }
        }
    }

    /** No cover that orders from these suppliers what they ask for costs less. */
    double bound() {
        double bound = 0;
        for (Choice choice : choices) {
            bound += choice.weighted();
        }
        for (int s = 0; s < forced.length; s++) {
            if (forced[s]) {
                bound += (1 - weights[s]) * market.minimums()[s];
            }
        }
        return bound;
    }

    double[] weights() {
        return weights;
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
