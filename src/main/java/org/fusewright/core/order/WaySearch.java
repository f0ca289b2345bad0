package org.fusewright.core.order;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Chooses one of its {@link Ways} for each part so that the orders reach their minimums at least
 * cost. Best bound first: the bound of each open case is the cheapest {@link Mixture} of its ways;
 * ways that it rules out are dropped, few enough of them are tried part by part ({@link
 * LabelSearch}), and otherwise the part on which the mixture disagrees most is split by what it
 * gives to an order.
 */
final class WaySearch {

    /**
     * @param quantities null when nothing within the limit was found
     * @param floor nothing within the limit costs less than this
     */
    record Outcome(int @Nullable [][] quantities, long cost, double floor) {}

    /** The ways left for each part, and what the best mixture of them says. */
    private record Case(
            int[][] left, double bound, List<int[]> columns, int part, int order, double at) {}

    private static final double TINY = 1e-5;
    private static final int MOST_ROUNDS = 60;
    private static final int LABELS = 1_000;
    private static final int MOST_LABELS = 3_000;
    private static final int LABEL_STEPS = 500_000;
    private static final int MOST_MIXED = 100;
    private static final int MOST_PASSES = 50;
    private static final int STEPS_FOR_PADDING = 2_000;

    private final Market market;
    private final boolean[] forced;
    private final Ways ways;
    private final Budget budget;
    private final int orders;
    private final PriorityQueue<Case> open =
            new PriorityQueue<>(Comparator.comparingDouble(Case::bound));
    private double limit;
    private long least = Long.MAX_VALUE;
    private int @Nullable [] leastChosen;
    private int @Nullable [][] best;
    private long bestCost;

    private WaySearch(
            Market market, boolean[] forced, Ways ways, double limit, long known, Budget budget) {
        this.bestCost = known;
        this.market = market;
        this.forced = forced;
        this.ways = ways;
        this.limit = limit;
        this.budget = budget;
        this.orders = ways.orders();
    }

    /**
     * @param limit the search is whole up to here; dearer answers may be found by the way
     * @param known the cost of a cover that there is; only cheaper ones are told
     */
    static Outcome search(
            Market market,
            boolean[] forced,
            Ways ways,
            double limit,
            long known,
            int cases,
            Budget budget) {
        return new WaySearch(market, forced, ways, limit + TINY, known, budget).search(cases);
    }

    private Outcome search(int cases) {
        int[][] all = new int[ways.parts()][];
        for (int p = 0; p < all.length; p++) {
            all[p] = new int[ways.count(p)];
            Arrays.setAll(all[p], way -> way);
        }
        examine(all, List.of(), true);
        for (int c = 0; c < cases && !open.isEmpty() && !budget.isSpent(); c++) {
            if (open.peek().bound() > Math.min(limit, least - 1 + TINY)) {
                break;
            }
            split(open.remove());
        }
        double floor = Math.min(ways.givenUp(), least);
        if (!open.isEmpty()) {
            floor = Math.min(floor, open.peek().bound());
        }
        if (ways.isFilling() && leastChosen != null && floor < bestCost) {
            trade(floor);
        }
        return new Outcome(best, bestCost, floor);
    }

    private void trade(double floor) {
        int[][] traded =
                Trading.trade(
                        market, forced, ways.quantities(leastChosen), floor, bestCost, budget);
        if (traded != null) {
            best = traded;
            bestCost = Market.sum(market.valuesOf(traded));
        }
    }

    private void split(Case one) {
        for (boolean above : new boolean[] {false, true}) {
            int[][] left = one.left().clone();
            left[one.part()] =
                    Arrays.stream(left[one.part()])
                            .filter(
                                    way ->
                                            ways.value(one.part(), way, one.order()) > one.at()
                                                    == above)
                            .toArray();
            List<int[]> columns =
                    one.columns().stream()
                            .filter(
                                    column ->
                                            ways.value(one.part(), column[one.part()], one.order())
                                                            > one.at()
                                                    == above)
                            .toList();
            examine(left, columns, false);
        }
    }

    private void examine(int[][] start, List<int[]> known, boolean first) {
        int[][] left = start;
        Discounting discounting = new Discounting(left, known);
        discounting.solve();
        if (discounting.bound > limit) {
            return;
        }
        left = discounting.withoutHopeless();
        tryMixed(discounting);
        if (discounting.bound > limit) {
            return;
        }
        int count = Arrays.stream(left).mapToInt(of -> of.length > 1 ? of.length : 0).sum();
        int most = Math.clamp(LABEL_STEPS / Math.max(1, count), 20, first ? MOST_LABELS : LABELS);
        LabelSearch.Outcome labels =
                LabelSearch.search(ways, left, discounting.tried, limit, most, first, budget);
        labels.chosen().forEach(this::offer);
        if (labels.isWhole()) {
            return;
        }
        discounting.left = left;
        Case next = discounting.splitUp();
        if (next != null && next.bound() <= limit) {
            open.add(next);
        }
    }

    /** Takes ways, and fills up orders that lack something. */
    private void offer(int[] chosen) {
        long cost = 0;
        boolean enough = true;
        for (int p = 0; p < chosen.length; p++) {
            cost += ways.cost(p, chosen[p]);
        }
        for (int m = 0; m < orders; m++) {
            long lacks = ways.minimum(m);
            for (int p = 0; p < chosen.length; p++) {
                lacks -= ways.value(p, chosen[p], m);
            }
            cost += Math.max(0, lacks);
            enough &= lacks <= 0;
        }
        if ((enough || ways.isFilling()) && cost < least) {
            least = cost;
            leastChosen = chosen.clone();
        }
        if (cost >= bestCost) {
            return;
        }
        int[][] quantities = ways.quantities(chosen);
        budget.spend(STEPS_FOR_PADDING);
        if (Padding.pad(market, quantities, forced)) {
            long whole = Market.sum(market.valuesOf(quantities));
            if (whole < bestCost) {
                bestCost = whole;
                best = quantities;
                limit = Math.min(limit, whole - 1 + TINY);
            }
        }
    }

    /** Where the mixture's covers differ in few parts, tries what they say of these in all ways. */
    private void tryMixed(Discounting discounting) {
        List<int[]> columns = discounting.used();
        int parts = ways.parts();
        List<Integer> differing = new ArrayList<>();
        List<int[]> choices = new ArrayList<>();
        long count = 1;
        for (int p = 0; p < parts; p++) {
            int part = p;
            int[] distinct = columns.stream().mapToInt(c -> c[part]).distinct().toArray();
            if (distinct.length > 1) {
                differing.add(p);
                choices.add(distinct);
                count = Math.min(2L * MOST_MIXED, count * distinct.length);
            }
        }
        if (count > MOST_MIXED) {
            columns.forEach(column -> offer(descended(column, discounting.left)));
            return;
        }
        int[] chosen = columns.getFirst().clone();
        for (long n = 0; n < count; n++) {
            long code = n;
            for (int d = 0; d < differing.size(); d++) {
                int p = differing.get(d);
                int way = choices.get(d)[(int) (code % choices.get(d).length)];
                code /= choices.get(d).length;
                chosen[p] = way;
            }
            offer(chosen);
        }
    }

    /** Changes one part at a time for as long as that makes the whole cheaper, with what lacks. */
    private int[] descended(int[] start, int[][] left) {
        int[] chosen = start.clone();
        long[] lacks = new long[orders];
        for (int m = 0; m < orders; m++) {
            lacks[m] = ways.minimum(m);
            for (int p = 0; p < chosen.length; p++) {
                lacks[m] -= ways.value(p, chosen[p], m);
            }
        }
        boolean improved = true;
        for (int pass = 0; improved && pass < MOST_PASSES; pass++) {
            improved = false;
            for (int p = 0; p < chosen.length; p++) {
                budget.spend(left[p].length);
                int way = cheapestBeside(p, chosen[p], left[p], lacks);
                if (way != chosen[p]) {
                    for (int m = 0; m < orders; m++) {
                        lacks[m] += ways.value(p, chosen[p], m) - ways.value(p, way, m);
                    }
                    chosen[p] = way;
                    improved = true;
                }
            }
        }
        return chosen;
    }

    private int cheapestBeside(int part, int now, int[] left, long[] lacks) {
        int cheapest = now;
        long least = Long.MAX_VALUE;
        for (int i = -1; i < left.length; i++) {
            int way = i < 0 ? now : left[i];
            long cost = ways.cost(part, way);
            for (int m = 0; m < orders; m++) {
                long lack = lacks[m] + ways.value(part, now, m) - ways.value(part, way, m);
                cost += Math.max(0, lack);
            }
            if (cost < least) {
                least = cost;
                cheapest = way;
            }
        }
        return cheapest;
    }

    /** The best discounts for the ways that are left. */
    private final class Discounting {

        private int[][] left;
        private final List<int[]> columns = new ArrayList<>();
        private final List<double[]> tried = new ArrayList<>();
        private @Nullable Mixture mixture;
        private double bound = Double.NEGATIVE_INFINITY;
        private double[] weights = new double[orders];

        Discounting(int[][] left, List<int[]> known) {
            this.left = left;
            columns.addAll(known);
        }

        void solve() {
            Arrays.fill(weights, 1);
            if (columns.isEmpty()) {
                columns.add(cheapest(weights));
            }
            for (int[] column : columns) {
                addToMixture(column);
            }
            for (int round = 0; round < MOST_ROUNDS && bound <= limit; round++) {
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
                mixture = new Mixture(rest, over);
                return true;
            }
            return mixture.add(rest, over);
        }

        private int[] cheapest(double[] at) {
            int[] column = new int[left.length];
            for (int p = 0; p < column.length; p++) {
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
            double sum = 0;
            for (int p = 0; p < column.length; p++) {
                sum += weighted(p, column[p], at);
            }
            for (int m = 0; m < orders; m++) {
                sum += (1 - at[m]) * ways.minimum(m);
            }
            return sum;
        }

        int[][] withoutHopeless() {
            int[][] kept = left.clone();
            for (int p = 0; p < kept.length; p++) {
                int part = p;
                double leastWeighted = Double.POSITIVE_INFINITY;
                for (int way : left[p]) {
                    leastWeighted = Math.min(leastWeighted, weighted(p, way, weights));
                }
                double most = leastWeighted + limit - bound;
                kept[p] =
                        Arrays.stream(left[p])
                                .filter(way -> weighted(part, way, weights) <= most)
                                .toArray();
            }
            return kept;
        }

        /** The covers that are mixed. */
        List<int[]> used() {
            double[] shares = mixture.shares();
            List<int[]> used = new ArrayList<>();
            for (int c = 0; c < columns.size(); c++) {
                if (shares[c] > 1e-9) {
                    used.add(columns.get(c));
                }
            }
            return used.isEmpty() ? List.of(columns.getLast()) : used;
        }

        @Nullable Case splitUp() {
            double[] shares = mixture.shares();
            double most = 0;
            int part = -1;
            int order = -1;
            double at = 0;
            for (int p = 0; p < left.length; p++) {
                if (left[p].length < 2) {
                    continue;
                }
                for (int m = 0; m < orders; m++) {
                    double mean = 0;
                    double square = 0;
                    double sum = 0;
                    for (int c = 0; c < columns.size(); c++) {
                        if (shares[c] > 1e-9) {
                            double value = ways.value(p, columns.get(c)[p], m);
                            mean += shares[c] * value;
                            square += shares[c] * value * value;
                            sum += shares[c];
                        }
                    }
                    mean /= sum;
                    double spread = square / sum - mean * mean;
                    if (spread > most + TINY) {
                        most = spread;
                        part = p;
                        order = m;
                        at = mean;
                    }
                }
            }
            if (part < 0) {
                // one cover reaches the bound but for what lacks or is too much: split the largest
                long widest = 0;
                for (int p = 0; p < left.length; p++) {
                    for (int m = 0; m < orders; m++) {
                        long low = Long.MAX_VALUE;
                        long high = Long.MIN_VALUE;
                        for (int way : left[p]) {
                            low = Math.min(low, ways.value(p, way, m));
                            high = Math.max(high, ways.value(p, way, m));
                        }
                        if (high - low > widest) {
                            widest = high - low;
                            part = p;
                            order = m;
                            at = (low + high) / 2.0;
                        }
                    }
                }
            }
            if (part < 0) {
                return null;
            }
            List<int[]> useful =
                    columns.size() <= 40
                            ? columns
                            : columns.subList(columns.size() - 40, columns.size());
            int[][] now = left;
            List<int[]> kept = useful.stream().filter(c -> fits(c, now)).toList();
            return new Case(left, bound, kept, part, order, at);
        }

        private boolean fits(int[] column, int[][] in) {
            for (int p = 0; p < column.length; p++) {
                if (Arrays.binarySearch(in[p], column[p]) < 0) {
                    return false;
                }
            }
            return true;
        }
    }
}
