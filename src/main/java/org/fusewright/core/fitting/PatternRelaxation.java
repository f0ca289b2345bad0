package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Blocks for what is left of a site, where a fraction of a block may be used: the least price of
 * {@link Pattern}s that hold every item, by column generation (Gilmore and Gomory, 1961), with
 * smoothed prices (Wentges, 1997). The bound is a Lagrangean one, worked out in whole numbers, so
 * that no rounding makes it too high.
 */
final class PatternRelaxation {

    /** Prices are whole multiples of a part of their unit: what is equal is so in every digit. */
    private static final int GRAINS = 256;

    private static final double TINY = 1e-7;
    private static final long QUICK_EFFORT = 300;
    private static final int QUICK_ROUNDS = 4;
    private static final double SMOOTHING = 0.7;
    private static final double LEAST_SMOOTHING = 0.2;

    private final FormTable table;
    private final ItemKinds kinds;
    private final PatternPricing pricing;
    private Rest rest;
    private final PatternRows rows;
    private final List<Pattern> pool;
    private final long limit;
    private final Budget budget;
    private final double unit;
    private final double scale;
    private final long grain;
    private final long mostBlocks;
    private final ColumnProgramme programme;

    /** The pattern of each column from the first one that is a block. */
    private final List<Integer> patternOf = new ArrayList<>();

    private final int firstPattern;

    /** Prices of kinds at which the bound was highest. */
    private double @Nullable [] centre;

    private long bound;
    private boolean converged;

    /**
     * @param pool patterns known so far; what is found is added
     * @param centre what an item of each kind might be worth, as a start; null for no idea
     * @param limit a bound above it is not looked for
     */
    PatternRelaxation(
            FormTable table,
            ItemKinds kinds,
            PatternPricing pricing,
            Rest rest,
            List<Pattern> pool,
            double @Nullable [] centre,
            long limit,
            Budget budget) {
        this.table = table;
        this.kinds = kinds;
        this.pricing = pricing;
        this.rest = rest;
        this.pool = pool;
        this.centre = centre;
        this.limit = limit;
        this.budget = budget;
        rows = new PatternRows(table, kinds, rest);
        long dearest = 1;
        long cheapest = limit;
        for (int f = 0; f < table.size(); f++) {
            dearest = Math.max(dearest, table.price[f] + table.plug[f] * table.positions[f]);
            if (!table.isNamed(f)) {
                cheapest = Math.min(cheapest, table.price[f]);
            }
        }
        unit = dearest;
        long most = Math.max(dearest, limit);
        scale = Math.max(1, PatternPricing.MOST_VALUE / most);
        grain = Math.max(1, (long) scale / GRAINS);
        mostBlocks = limit / Math.max(1, cheapest) + 1;
        programme = new ColumnProgramme(rows.rightSide(rest), 2 * limit / unit);
        rows.addSlack(programme, unit);
        firstPattern = programme.size();
        for (int p = 0; p < pool.size(); p++) {
            if (!rows.isClosed(pool.get(p).form())) {
                programme.add(rows.column(pool.get(p), unit));
                patternOf.add(p);
            }
        }
    }

    /**
     * Adds patterns until none is found that could lower the price, or the bound says enough.
     *
     * @param effort steps to look for such a pattern of a form, before it is given up
     */
    void solve(long effort) {
        while (!converged && bound < limit && programme.solve(budget)) {
            double[] exact = programme.prices().clone();
            double smoothing = centre == null ? 0 : SMOOTHING;
            boolean came = price(smoothed(exact, smoothing), QUICK_EFFORT);
            while (!came && smoothing > 0) {
                smoothing = smoothing > LEAST_SMOOTHING ? smoothing / 2 : 0;
                came = price(smoothed(exact, smoothing), QUICK_EFFORT);
            }
            if (!came && !price(exact, effort)) {
                converged = !budget.isSpent();
            }
            if (budget.isSpent()) {
                return;
            }
        }
    }

    /**
     * Goes on with less to be held: quickly, adding the patterns that come up at once, and without
     * a bound. False when the steps are spent.
     */
    boolean goOnWith(Rest less) {
        rest = less;
        centre = null;
        bound = Covers.IMPOSSIBLE;
        boolean solved = programme.solve(rows.rightSide(rest), budget);
        for (int n = 0; n < QUICK_ROUNDS && solved; n++) {
            solved = price(programme.prices(), QUICK_EFFORT) && programme.solve(budget);
        }
        return !budget.isSpent();
    }

    /** No blocks hold the rest at a lower price. */
    long bound() {
        return bound;
    }

    /** Whether no pattern was found that would lower the price. */
    boolean isConverged() {
        return converged;
    }

    /** What an item of each kind is worth. */
    double[] values() {
        return Arrays.copyOf(programme.prices(), kinds.size());
    }

    /** How much of each pattern of the pool is used. */
    double[] amounts() {
        double[] byPattern = new double[pool.size()];
        double[] byColumn = programme.amounts();
        for (int n = 0; n < patternOf.size(); n++) {
            byPattern[patternOf.get(n)] = byColumn[firstPattern + n];
        }
        return byPattern;
    }

    private double[] smoothed(double[] exact, double smoothing) {
        if (centre == null || smoothing == 0) {
            return exact;
        }
        double[] mixed = exact.clone();
        for (int k = 0; k < kinds.size(); k++) {
            mixed[k] += smoothing * (centre[k] - exact[k]);
        }
        return mixed;
    }

    /**
     * Adds patterns that lower the price, and raises the bound; false when nothing came of it.
     *
     * @param effort steps for each form
     */
    private boolean price(double[] at, long effort) {
        long[] prices = new long[at.length];
        for (int r = 0; r < prices.length; r++) {
            prices[r] = Math.round(at[r] * unit * scale / grain) * grain;
        }
        rows.setSigns(prices);
        long[] leastOfNamed = new long[table.names.size()];
        Arrays.fill(leastOfNamed, Covers.IMPOSSIBLE);
        long leastOfOthers = 0;
        boolean added = false;
        for (int f = 0; f < table.size(); f++) {
            if (rows.isClosed(f)) {
                continue;
            }
            PatternPricing.Found best = mostValuable(f, prices, effort);
            long empty =
                    (table.price[f] + table.plug[f] * table.positions[f]) * (long) scale
                            - rows.worthOfBlock(f, prices);
            long least = empty - best.worth();
            if (table.isNamed(f)) {
                int b = table.nameOf(f);
                leastOfNamed[b] = Math.min(leastOfNamed[b], least);
            } else {
                leastOfOthers = Math.min(leastOfOthers, least);
            }
            added |= add(Pattern.of(f, best.counts(), kinds, table));
        }
        long worth = rows.worthOfRightSide(prices) + leastOfOthers * mostBlocks;
        for (int b = 0; b < leastOfNamed.length; b++) {
            if (rest.open()[b]) {
                if (leastOfNamed[b] == Covers.IMPOSSIBLE) {
                    bound = Covers.IMPOSSIBLE;
                    return true;
                }
                worth += leastOfNamed[b];
            }
        }
        raise(table.roundUp(Math.ceilDiv(worth, (long) scale)), at);
        return added || converged;
    }

    private PatternPricing.Found mostValuable(int form, long[] prices, long effort) {
        long[] values = rows.values(form, prices);
        for (int k = 0; k < values.length; k++) {
            values[k] += table.plug[form] * (long) scale * kinds.width[k];
        }
        Budget part = budget.split(effort);
        PatternPricing.Found found = pricing.find(form, values, rest.items(), part);
        budget.giveBack(part);
        return found;
    }

    private boolean add(Pattern pattern) {
        ColumnProgramme.Column column = rows.column(pattern, unit);
        if (programme.reduced(column) > -TINY / 10) {
            return false;
        }
        programme.add(column);
        patternOf.add(pool.size());
        pool.add(pattern);
        return true;
    }

    private void raise(long to, double[] at) {
        if (to > bound) {
            bound = to;
            centre = Arrays.copyOf(at, kinds.size());
        }
        converged |= bound >= (programme.cost() - TINY) * unit;
    }
}
