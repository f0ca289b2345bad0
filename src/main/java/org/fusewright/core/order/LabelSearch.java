package org.fusewright.core.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Chooses one way for each part so that the orders reach their minimums at least cost, part by
 * part: dynamic programming over what the orders reach, in which of partial answers that reach the
 * same only the cheapest is kept, and of those only the ones that a bound does not rule out.
 */
final class LabelSearch {

    /**
     * @param chosen the cheapest answers within the limit, the best first
     * @param isWhole whether no answer within the limit is cheaper
     * @param isAll whether these are all answers within the limit
     */
    record Outcome(List<int[]> chosen, boolean isWhole, boolean isAll) {}

    private static final int MOST_ANSWERS = 20;
    private static final int MOST_DISCOUNTS = 10;
    private static final int ROOM = 20;

    private final Ways ways;
    private final int[][] left;
    private final Integer[] order;
    private final double[][] discounts;
    private final double[][] rests;
    private final Budget budget;
    private boolean narrowed;

    /**
     * @param left the ways of each part
     * @param weights of the orders, that bounds come from; the best last
     */
    LabelSearch(Ways ways, int[][] left, List<double[]> weights, Budget budget) {
        this.ways = ways;
        this.left = left;
        this.budget = budget;
        order = new Integer[left.length];
        Arrays.setAll(order, p -> p);
        Arrays.sort(order, Comparator.comparingInt(p -> left[p].length));
        int count = Math.min(MOST_DISCOUNTS, weights.size());
        discounts = new double[count][ways.orders()];
        rests = new double[count][left.length + 1];
        for (int d = 0; d < count; d++) {
            double[] used = weights.get(weights.size() - 1 - d);
            for (int m = 0; m < used.length; m++) {
                discounts[d][m] = 1 - used[m];
            }
            for (int at = left.length - 1; at >= 0; at--) {
                rests[d][at] = rests[d][at + 1] + leastWeighted(order[at], discounts[d]);
            }
        }
    }

    private double leastWeighted(int part, double[] discount) {
        double least = Double.POSITIVE_INFINITY;
        for (int way : left[part]) {
            double weighted = ways.cost(part, way);
            for (int m = 0; m < discount.length; m++) {
                weighted -= discount[m] * ways.value(part, way, m);
            }
            least = Math.min(least, weighted);
        }
        return least;
    }

    /**
     * Some of the cheapest answers.
     *
     * @param most partial answers
     * @param narrowing whether to go on with the most promising ones when there are more
     */
    Outcome findCheapest(double limit, int most, boolean narrowing) {
        return search(limit, most, narrowing, true, MOST_ANSWERS);
    }

    /** All answers within a limit, if there are no more than {@code most} partial ones. */
    Outcome listAll(double limit, int most) {
        return search(limit, most, false, false, Integer.MAX_VALUE);
    }

    private Outcome search(
            double limit, int most, boolean narrowing, boolean merging, int answers) {
        narrowed = false;
        List<Labels> layers = new ArrayList<>();
        Labels labels = new Labels(ways.orders(), merging);
        labels.add(ways.settledCost(), new long[ways.orders()], 0, -1, -1);
        layers.add(labels);
        boolean merged = false;
        for (int at = 0; at < order.length; at++) {
            labels = extended(labels, limit, most, at, narrowing, merging);
            if (!narrowing && labels.count() > most) {
                return new Outcome(List.of(), false, false);
            }
            merged |= labels.lostBound() <= limit;
            narrowed |= labels.count() > most;
            labels = labels.narrowed(most);
            layers.add(labels);
        }
        Labels last = labels;
        List<int[]> chosen =
                IntStream.range(0, last.count())
                        .boxed()
                        .sorted(Comparator.comparingDouble(last::bound))
                        .limit(answers)
                        .map(label -> chosen(layers, label))
                        .toList();
        return new Outcome(chosen, !narrowed, !narrowed && !merged && last.count() <= answers);
    }

    private Labels extended(
            Labels labels, double limit, int most, int at, boolean narrowing, boolean merging) {
        int part = order[at];
        Labels next = new Labels(ways.orders(), merging);
        long[] values = new long[ways.orders()];
        for (int label = 0; label < labels.count(); label++) {
            if (!narrowing && next.count() > most) {
                break;
            }
            budget.spend(left[part].length);
            for (int way : left[part]) {
                for (int m = 0; m < values.length; m++) {
                    values[m] =
                            Math.min(
                                    ways.minimum(m),
                                    labels.value(label, m) + ways.value(part, way, m));
                }
                long cost = labels.cost(label) + ways.cost(part, way);
                double bound = boundOf(cost, values, at + 1, limit);
                if (bound <= limit) {
                    next.add(cost, values, bound, label, way);
                    if (next.count() > ROOM * most) {
                        next = next.narrowed(most);
                        narrowed = true;
                    }
                }
            }
        }
        return next;
    }

    /** The best of what the discounts say of the rest, or one that is over the limit. */
    private double boundOf(long cost, long[] values, int at, double limit) {
        if (at == order.length) {
            long lacks = 0;
            for (int m = 0; m < values.length; m++) {
                lacks += ways.minimum(m) - values[m];
            }
            return cost + lacks;
        }
        double best = Double.NEGATIVE_INFINITY;
        for (int d = 0; d < discounts.length && best <= limit; d++) {
            double bound = cost + rests[d][at];
            for (int m = 0; m < values.length; m++) {
                bound += discounts[d][m] * (ways.minimum(m) - values[m]);
            }
            best = Math.max(best, bound);
        }
        return best;
    }

    private int[] chosen(List<Labels> layers, int end) {
        int[] chosen = new int[order.length];
        int label = end;
        for (int at = order.length - 1; at >= 0; at--) {
            Labels layer = layers.get(at + 1);
            chosen[order[at]] = layer.option(label);
            label = layer.before(label);
        }
        return chosen;
    }
}
