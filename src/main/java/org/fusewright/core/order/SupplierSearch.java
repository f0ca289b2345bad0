package org.fusewright.core.order;

import org.fusewright.core.order.LabelSearch.Effort;
import org.fusewright.core.order.LabelSearch.Outcome;
import org.fusewright.core.order.PartSupply.Choice;
import org.jspecify.annotations.Nullable;

import java.util.List;
import java.util.Optional;

/**
 * The cheapest cover of all parts at once. Without minimum orders each part stands by itself; with
 * them the search decides, supplier by supplier where it matters, whether nothing is ordered there
 * or at least the minimum, and leaves out what a {@link Relaxation} shows not to pay.
 */
final class SupplierSearch {

    /**
     * @param bound no cover costs less; equal to the cost when that is proven
     */
    record Found(int[][] quantities, long cost, long bound) {}

    private static final int MOST_NODES = 2_000;
    private static final double TINY = 1e-5;

    /** From quick to thorough; the next one is tried while the answer is not proven. */
    private static final List<Effort> EFFORTS =
            List.of(
                    new Effort(100, 100, 1_000_000),
                    new Effort(500, 2_000, 4_000_000),
                    new Effort(4_000, 50_000, 20_000_000));

    private final Market market;
    private int @Nullable [][] best;
    private long bestCost = Long.MAX_VALUE;
    private double unproven = Double.POSITIVE_INFINITY;
    private int nodes;

    private SupplierSearch(Market market) {
        this.market = market;
    }

    /** Empty when the minimum orders cannot be reached in any way. */
    static Optional<Found> search(Market market) {
        SupplierSearch search = new SupplierSearch(market);
        boolean[] none = new boolean[market.suppliers().size()];
        Choice[] undiscounted = new Choice[market.parts().size()];
        if (search.cover(undiscounted, none)) {
            search.visit(none, none, undiscounted);
        }
        if (search.best == null) {
            return Optional.empty();
        }
        long bound = (long) Math.ceil(Math.min(search.unproven, search.bestCost) - TINY);
        return Optional.of(new Found(search.best, search.bestCost, bound));
    }

    /** Finds the cheapest choice for each part that has none; false when there is none. */
    private boolean cover(@Nullable Choice[] choices, boolean[] out) {
        double[] weights = Relaxation.weightsWithout(out);
        for (int p = 0; p < choices.length; p++) {
            if (choices[p] == null) {
                choices[p] = market.parts().get(p).findCheapest(weights);
                if (choices[p] == null) {
                    return false;
                }
            }
        }
        return true;
    }

    private void visit(boolean[] out, boolean[] forced, Choice[] undiscounted) {
        Relaxation relaxed = Relaxation.of(market, out, forced, undiscounted);
        if (isRuledOut(relaxed.bound())) {
            return;
        }
        if (++nodes > MOST_NODES) {
            unproven = Math.min(unproven, relaxed.bound());
            return;
        }
        int[][] filled = relaxed.quantities();
        if (FillUp.fill(market, filled)
                && reachesForced(market.valuesOf(filled), forced)) {
            offer(filled);
        }
        if (isRuledOut(relaxed.bound())) {
            return;
        }
        int supplier = findUndecided(relaxed.quantities(), forced);
        if (supplier < 0) {
            supplier = solve(relaxed, out, forced);
        }
        if (supplier >= 0) {
            branch(supplier, out, forced, undiscounted);
        }
    }

    private boolean isRuledOut(double bound) {
        return bound > bestCost - 1 + TINY;
    }

    private boolean reachesForced(long[] values, boolean[] forced) {
        for (int s = 0; s < values.length; s++) {
            if (forced[s] && values[s] < market.minimums()[s]) {
                return false;
            }
        }
        return true;
    }

    /** Of the orders below their minimum that are not decided on, the one that lacks most. */
    private int findUndecided(int[][] quantities, boolean[] forced) {
        long[] values = market.valuesOf(quantities);
        boolean[] used = market.usedBy(quantities);
        int found = -1;
        long most = 0;
        for (int s = 0; s < values.length; s++) {
            long lacking = market.minimums()[s] - values[s];
            if (!forced[s] && used[s] && lacking > most) {
                most = lacking;
                found = s;
            }
        }
        return found;
    }

    /** Solves with the decisions made so far; a supplier whose order then lacks something. */
    private int solve(Relaxation relaxed, boolean[] out, boolean[] forced) {
        double floor = relaxed.bound();
        for (Effort effort : EFFORTS) {
            Outcome outcome =
                    LabelSearch.search(market, relaxed, forced, bestCost - 1, effort);
            floor = Math.max(floor, Math.min(outcome.floor(), bestCost));
            if (outcome.quantities() != null) {
                int lacking = findUndecided(outcome.quantities(), forced);
                if (lacking >= 0) {
                    return lacking;
                }
                offer(outcome.quantities());
            }
            if (isRuledOut(floor)) {
                return -1;
            }
        }
        unproven = Math.min(unproven, floor);
        return -1;
    }

    private void offer(int[][] quantities) {
        long cost = Market.sum(market.valuesOf(quantities));
        if (cost < bestCost) {
            bestCost = cost;
            best = quantities;
        }
    }

    private void branch(int supplier, boolean[] out, boolean[] forced, Choice[] undiscounted) {
        boolean[] without = out.clone();
        without[supplier] = true;
        @Nullable Choice[] kept = undiscounted.clone();
        for (int p = 0; p < kept.length; p++) {
            if (market.parts().get(p).uses(supplier, undiscounted[p].quantities())) {
                kept[p] = null;
            }
        }
        if (cover(kept, without)) {
            visit(without, forced, kept);
        }
        boolean[] with = forced.clone();
        with[supplier] = true;
        visit(out, with, undiscounted);
    }
}
