package org.fusewright.core.order;

import org.fusewright.core.order.Discounts.Spread;
import org.jspecify.annotations.Nullable;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Chooses one of its {@link Ways} for each part so that the orders reach their minimums at least
 * cost: branch and price, best bound first. The bound of each open case comes from the best {@link
 * Discounts} for its ways; ways that it rules out are dropped, few enough of them are tried part by
 * part ({@link LabelSearch}), and otherwise the part on which the mixed covers disagree most is
 * split by what it gives to an order. A case is done when each of its answers that could be cheaper
 * has been filled up to real orders.
 */
final class WaySearch {

    /**
     * @param quantities null when nothing cheaper than known was found
     * @param floor nothing costs less than this, or than the search was limited to
     * @param start what to buy in the cheapest answer, not filled up; null when there was none
     * @param isStuck whether more cases would tell no more
     */
    record Outcome(
            int @Nullable [][] quantities,
            double floor,
            int @Nullable [][] start,
            boolean isStuck) {}

    /** The ways left for each part, and where to split them next. */
    private record Case(
            int[][] left, double bound, double guide, List<int[]> columns, Spread spread) {

        /** Whole minor units that no answer is below. */
        double floor() {
            return Math.ceil(bound - TINY);
        }
    }

    private static final double TINY = 1e-5;
    private static final int LABELS = 200;
    private static final int MOST_LABELS = 3_000;
    private static final int LABEL_STEPS = 500_000;
    private static final int FEW_LISTED = 300;
    private static final int MOST_LISTED = 20_000;
    private static final int ALWAYS_FILLED = 20;
    private static final int SELDOM_FILLED = 8;

    private final Market market;
    private final Ways ways;
    private final Budget budget;
    private final Filling filling;
    private final PriorityQueue<Case> open =
            new PriorityQueue<>(
                    Comparator.comparingDouble(Case::floor).thenComparingDouble(Case::guide));
    private final double limit;
    private int looked;
    private double givenUp = Double.POSITIVE_INFINITY;

    private WaySearch(Market market, Ways ways, Filling filling, double limit, Budget budget) {
        this.market = market;
        this.ways = ways;
        this.filling = filling;
        this.limit = limit;
        this.budget = budget;
    }

    /**
     * @param limit the search is whole up to here; dearer answers may be found by the way
     * @param known the cost of a cover that there is; only cheaper ones are told
     */
    static Outcome search(
            Market market, boolean[] forced, Ways ways, double limit, long known, Budget budget) {
        Filling filling = new Filling(market, forced, ways, known, budget);
        return new WaySearch(market, ways, filling, limit + TINY, budget).search();
    }

    private Outcome search() {
        examine(ways.first(), List.of(ways.cheapest()), true);
        while (!open.isEmpty() && open.peek().bound() <= limit() && !budget.isSpent()) {
            split(open.remove());
        }
        double floor = open.isEmpty() ? givenUp : Math.min(givenUp, open.peek().bound());
        boolean isStuck = givenUp <= floor && givenUp <= limit();
        return new Outcome(filling.best(), floor, filling.start(), isStuck);
    }

    /** Nothing dearer is looked for. */
    private double limit() {
        return Math.min(limit, filling.bestCost() - 1 + TINY);
    }

    private void split(Case one) {
        Spread by = one.spread();
        for (boolean above : new boolean[] {false, true}) {
            int[][] left = one.left().clone();
            left[by.part()] =
                    Arrays.stream(left[by.part()])
                            .filter(way -> isAbove(by, way) == above)
                            .toArray();
            List<int[]> columns =
                    one.columns().stream()
                            .filter(column -> isAbove(by, column[by.part()]) == above)
                            .toList();
            examine(left, columns, false);
        }
    }

    private boolean isAbove(Spread by, int way) {
        return ways.value(by.part(), way, by.order()) > by.at();
    }

    private void examine(int[][] start, List<int[]> known, boolean first) {
        looked++;
        Discounts discounts = Discounts.solve(ways, start, known, limit(), budget);
        if (discounts.bound() > limit()) {
            return;
        }
        Discounts guide = discounts.guiding(limit());
        if (guide.bound() > limit()) {
            return;
        }
        if (looked < ALWAYS_FILLED || looked % SELDOM_FILLED == 0) {
            filling.offerMixed(guide.mixed(), start);
        }
        if (discounts.bound() > limit()) {
            return;
        }
        int[][] left = start.clone();
        guide.dropHopeless(left, limit());
        for (int p = 0; p < left.length; p++) {
            if (left[p] == null) {
                left[p] = list(p, discounts, guide, FEW_LISTED);
            }
        }
        if (guide != discounts) {
            discounts.dropHopeless(left, limit());
            guide.dropHopeless(left, limit());
        }
        if (Arrays.stream(left).allMatch(list -> list != null)
                && isDoneByLabels(left, guide, first)) {
            return;
        }
        if (discounts.bound() > limit()) {
            return;
        }
        Spread spread = spreadOf(left, discounts, guide);
        if (spread == null) {
            givenUp = Math.min(givenUp, discounts.bound());
            return;
        }
        List<int[]> columns = guide.latest().stream().filter(column -> fits(column, left)).toList();
        open.add(new Case(left, discounts.bound(), guide.bound(), columns, spread));
    }

    private int @Nullable [] list(int part, Discounts discounts, Discounts guide, int most) {
        int[] list = ways.list(part, guide.weights(), limit() - guide.bound(), most);
        return list != null || guide == discounts
                ? list
                : ways.list(part, discounts.weights(), limit() - discounts.bound(), most);
    }

    private boolean isDoneByLabels(int[][] left, Discounts discounts, boolean first) {
        int count = Arrays.stream(left).mapToInt(of -> of.length > 1 ? of.length : 0).sum();
        int most = Math.clamp(LABEL_STEPS / Math.max(1, count), 20, first ? MOST_LABELS : LABELS);
        LabelSearch labels = new LabelSearch(ways, left, discounts.tried(), budget);
        LabelSearch.Outcome cheapest = labels.findCheapest(limit(), most, first);
        boolean isSettled = offerAll(cheapest);
        if (!cheapest.isWhole()) {
            return false;
        }
        if (cheapest.chosen().isEmpty() || discounts.bound() > limit()) {
            return true;
        }
        if (!cheapest.isAll()) {
            LabelSearch.Outcome all = labels.listAll(limit(), most);
            isSettled = all.isWhole() && offerAll(all);
        }
        return isSettled;
    }

    private boolean offerAll(LabelSearch.Outcome outcome) {
        boolean isSettled = true;
        for (int[] chosen : outcome.chosen()) {
            isSettled &= filling.offer(chosen);
        }
        return isSettled;
    }

    /** Where to split; lists an open part for that. Null when there is nothing to split. */
    private @Nullable Spread spreadOf(int[][] left, Discounts discounts, Discounts guide) {
        Spread spread = guide.findSpread(false);
        if (spread != null && left[spread.part()] == null) {
            left[spread.part()] = list(spread.part(), discounts, guide, MOST_LISTED);
            if (left[spread.part()] == null) {
                spread = guide.findSpread(true);
            }
        }
        return spread != null && isSplitBy(left, spread) ? spread : widest(left);
    }

    private boolean isSplitBy(int[][] left, Spread spread) {
        int[] list = left[spread.part()];
        long above = Arrays.stream(list).filter(way -> isAbove(spread, way)).count();
        return above > 0 && above < list.length;
    }

    /** The part whose ways differ most in what they give to an order, split in the middle. */
    private @Nullable Spread widest(int[][] left) {
        Spread found = null;
        long most = 0;
        for (int p = 0; p < left.length; p++) {
            for (int m = 0; m < ways.orders() && left[p] != null; m++) {
                long low = Long.MAX_VALUE;
                long high = Long.MIN_VALUE;
                for (int way : left[p]) {
                    low = Math.min(low, ways.value(p, way, m));
                    high = Math.max(high, ways.value(p, way, m));
                }
                if (high - low > most) {
                    most = high - low;
                    found = new Spread(p, m, (low + high) / 2.0);
                }
            }
        }
        return found;
    }

    private boolean fits(int[] column, int[][] in) {
        for (int p = 0; p < column.length; p++) {
            if (in[p] != null && Arrays.binarySearch(in[p], column[p]) < 0) {
                return false;
            }
        }
        return true;
    }
}
