package org.fusewright.core.order;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The best discounts for some of the {@link Ways}, and the bound that they give (Lagrangian dual by
 * column generation: Dantzig and Wolfe). A part that is open may take any of its ways.
 */
final class Discounts {

    private static final int MOST_ROUNDS = 60;
    private static final int MOST_KEPT = 40;
    private static final int STEPS_FOR_AN_OPEN_PART = 20;
    private static final double NOTHING = 1e-9;
    private static final double EXACT_ENOUGH = 0.01;

    /** The part on which the mixed covers disagree most: on what it gives to which order. */
    record Spread(int part, int order, double at) {}

    private final Ways ways;
    private final int[][] left;
    private final Budget budget;
    private final int orders;
    private final List<int[]> columns = new ArrayList<>();
    private final List<double[]> tried = new ArrayList<>();
    private final double leastWeight;
    private @Nullable Mixture mixture;
    private double bound = Double.NEGATIVE_INFINITY;
    private double[] weights;

    private Discounts(
            Ways ways, int[][] left, List<int[]> known, double leastWeight, Budget budget) {
        this.leastWeight = leastWeight;
        this.ways = ways;
        this.left = left;
        this.budget = budget;
        this.orders = ways.orders();
        this.weights = new double[orders];
        columns.addAll(known);
    }

    /**
     * @param left the ways of each part; null where it is open
     * @param known covers of such ways
     * @param limit a bound above is not made better
     */
    static Discounts solve(
            Ways ways, int[][] left, List<int[]> known, double limit, Budget budget) {
        Discounts discounts = new Discounts(ways, left, known, Mixture.LEAST_WEIGHT, budget);
        discounts.solve(limit);
        return discounts;
    }

    /**
     * The same with lesser discounts, where some are so great that money hardly counts: a somewhat
     * lower bound, but one that tells ways that buy less from others.
     */
    Discounts guiding(double limit) {
        if (Arrays.stream(weights).allMatch(weight -> weight >= Mixture.HARDLY_COUNTS)) {
            return this;
        }
        Discounts discounts = new Discounts(ways, left, columns, Mixture.GUIDING_WEIGHT, budget);
        discounts.solve(limit);
        return discounts;
    }

    private void solve(double limit) {
        Arrays.fill(weights, 1);
        if (columns.isEmpty()) {
            columns.add(cheapest(weights));
        }
        for (int[] column : columns) {
            addToMixture(column);
        }
        double base = ways.settledCost();
        for (int m = 0; m < orders; m++) {
            base += ways.minimum(m);
        }
        for (int round = 0; round < MOST_ROUNDS && bound <= limit; round++) {
            double room = mixture.cost() + base - bound;
            if (room < EXACT_ENOUGH * Math.min(1, limit - bound)) {
                break;
            }
            double[] next = mixture.weights();
            int[] column = cheapest(next);
            double found = weigh(column, next);
            tried.add(next);
            if (found > bound) {
                bound = found;
                weights = next;
            }
            columns.add(column);
            if (!addToMixture(column)) {
                break;
            }
        }
    }

    private boolean addToMixture(int[] column) {
        double rest = 0;
        double[] over = new double[orders];
        for (int p = 0; p < column.length; p++) {
            rest += ways.cost(p, column[p]);
            for (int m = 0; m < orders; m++) {
                over[m] += ways.value(p, column[p], m);
            }
        }
        for (int m = 0; m < orders; m++) {
            rest -= over[m];
            over[m] -= ways.minimum(m);
        }
        if (mixture == null) {
            mixture = new Mixture(rest, over, leastWeight);
            return true;
        }
        return mixture.add(rest, over);
    }

    private int[] cheapest(double[] at) {
        int[] column = new int[left.length];
        for (int p = 0; p < column.length; p++) {
            if (left[p] == null) {
                budget.spend(STEPS_FOR_AN_OPEN_PART);
                column[p] = ways.findCheapest(p, at);
                continue;
            }
            double leastWeighted = Double.POSITIVE_INFINITY;
            budget.spend(left[p].length);
            for (int way : left[p]) {
                double weighted = weighted(p, way, at);
                if (weighted < leastWeighted) {
                    leastWeighted = weighted;
                    column[p] = way;
                }
            }
        }
        return column;
    }

    private double weighted(int part, int way, double[] at) {
        double weighted = ways.cost(part, way);
        for (int m = 0; m < orders; m++) {
            weighted -= (1 - at[m]) * ways.value(part, way, m);
        }
        return weighted;
    }

    private double weigh(int[] column, double[] at) {
        double sum = ways.settledCost();
        for (int p = 0; p < column.length; p++) {
            sum += weighted(p, column[p], at);
        }
        for (int m = 0; m < orders; m++) {
            sum += (1 - at[m]) * ways.minimum(m);
        }
        return sum;
    }

    /** No cover of these ways costs less. */
    double bound() {
        return bound;
    }

    /** By order, what a unit spent there counts at the best discounts. */
    double[] weights() {
        return weights;
    }

    /** All weights that were looked at. */
    List<double[]> tried() {
        return tried;
    }

    /** Drops the ways that cannot belong to a cover within the limit. */
    void dropHopeless(int[][] from, double limit) {
        for (int p = 0; p < from.length; p++) {
            if (from[p] != null && from[p].length > 1) {
                from[p] = withoutHopeless(p, from[p], limit - bound);
            }
        }
    }

    private int[] withoutHopeless(int part, int[] from, double room) {
        double[] weighted = new double[from.length];
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < weighted.length; i++) {
            weighted[i] = weighted(part, from[i], weights);
            least = Math.min(least, weighted[i]);
        }
        int[] kept = new int[from.length];
        int count = 0;
        for (int i = 0; i < weighted.length; i++) {
            if (weighted[i] <= least + room) {
                kept[count++] = from[i];
            }
        }
        return count == from.length ? from : Arrays.copyOf(kept, count);
    }

    /** The covers that are mixed. */
    List<int[]> mixed() {
        double[] shares = mixture.shares();
        List<int[]> mixed = new ArrayList<>();
        for (int c = 0; c < shares.length; c++) {
            if (shares[c] > NOTHING) {
                mixed.add(columns.get(c));
            }
        }
        return mixed.isEmpty() ? List.of(columns.getLast()) : mixed;
    }

    /** The covers that a narrower search may start from. */
    List<int[]> latest() {
        return columns.subList(Math.max(0, columns.size() - MOST_KEPT), columns.size());
    }

    /**
     * @param listed whether to leave out the parts that are open
     * @return null when all mixed covers agree
     */
    @Nullable Spread findSpread(boolean listed) {
        double[] shares = mixture.shares();
        Spread found = null;
        double most = 1e-5;
        for (int p = 0; p < left.length; p++) {
            if (left[p] == null ? listed : left[p].length < 2) {
                continue;
            }
            for (int m = 0; m < orders; m++) {
                double mean = 0;
                double square = 0;
                double sum = 0;
                for (int c = 0; c < shares.length; c++) {
                    if (shares[c] > NOTHING) {
                        double value = ways.value(p, columns.get(c)[p], m);
                        mean += shares[c] * value;
                        square += shares[c] * value * value;
                        sum += shares[c];
                    }
                }
                mean /= sum;
                double spread = square / sum - mean * mean;
                if (spread > most) {
                    most = spread;
                    found = new Spread(p, m, mean);
                }
            }
        }
        return found;
    }
}
