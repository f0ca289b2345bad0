package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.List;

/**
 * Fills block after block with what is worth most for its price, and gives what ended up in dear
 * blocks a higher value before the next round (sequential value correction, after Belov and
 * Scheithauer, 2007). Proves nothing; nearly always finds blocks within one of the fewest.
 */
final class SequentialFilling {

    private static final long EFFORT = 150;
    private static final double CORRECTION = 0.4;

    /** Large items come before small ones of the same worth for their size. */
    private static final double PREFERENCE = 0.1;

    /** As a value, of what a block costs. */
    private static final double UNIT = 1L << 36;

    private final FormTable table;
    private final ItemKinds kinds;
    private final PatternPricing pricing;
    private final int positions;
    private final double[] value;
    private final double unit;

    /**
     * @param positions that the blocks must have together, at least
     */
    SequentialFilling(Site site, ItemKinds kinds, PatternPricing pricing, int positions) {
        this.kinds = kinds;
        this.pricing = pricing;
        this.positions = positions;
        table = site.table;
        value = new double[kinds.size()];
        long dearest = 1;
        for (int f = 0; f < table.size(); f++) {
            dearest = Math.max(dearest, table.price[f] + table.plug[f] * table.positions[f]);
        }
        unit = dearest;
        for (int k = 0; k < value.length; k++) {
            value[k] = Double.POSITIVE_INFINITY;
            for (int f = 0; f < table.size(); f++) {
                if (kinds.takers[k].forms[f]) {
                    double room = (double) kinds.width[k] / table.positions[f];
                    double current = (double) kinds.current[k] / table.limit[f];
                    double share = Math.min(1, Math.max(room, current));
                    value[k] = Math.min(value[k], share * table.price[f] / unit);
                }
            }
        }
    }

    /** The blocks of one more round; none when the steps are spent first. */
    List<Pattern> next(Budget budget) {
        List<Pattern> blocks = new ArrayList<>();
        int[] left = new int[kinds.size()];
        int items = 0;
        for (int k = 0; k < left.length; k++) {
            left[k] = kinds.count(k);
            items += left[k];
        }
        for (int f = 0; f < table.firstUnnamed(); f = table.nextStart(f)) {
            items -= take(best(f, table.nextStart(f), left, true, budget), left, blocks);
        }
        while (items > 0) {
            int taken =
                    take(
                            best(table.firstUnnamed(), table.size(), left, false, budget),
                            left,
                            blocks);
            if (budget.isSpent() || taken == 0) {
                return List.of();
            }
            items -= taken;
        }
        correct(blocks);
        addSpares(blocks);
        return blocks;
    }

    /** What an item of each kind is worth, where the dearest block is worth 1. */
    double[] values() {
        return value.clone();
    }

    private static int take(Pattern pattern, int[] left, List<Pattern> blocks) {
        int taken = 0;
        for (int n = 0; n < pattern.kinds().length; n++) {
            left[pattern.kinds()[n]] -= pattern.counts()[n];
            taken += pattern.counts()[n];
        }
        blocks.add(pattern);
        return taken;
    }

    private Pattern best(int from, int to, int[] left, boolean empty, Budget budget) {
        long[] worth = new long[value.length];
        Pattern best = new Pattern(from, new int[0], new int[0], Long.MAX_VALUE);
        double most = Double.NEGATIVE_INFINITY;
        for (int f = from; f < to; f++) {
            for (int k = 0; k < worth.length; k++) {
                double plugs = table.plug[f] * kinds.width[k] / unit;
                double here = (value[k] + plugs) * Math.pow(value[k], PREFERENCE);
                worth[k] = Math.max(1, (long) (here * UNIT));
            }
            Budget part = budget.split(EFFORT);
            PatternPricing.Found found = pricing.find(f, worth, left, part);
            budget.giveBack(part);
            Pattern pattern = Pattern.of(f, found.counts(), kinds, table);
            double sum = sum(pattern);
            double ratio = empty ? sum * unit - pattern.price() : sum * unit / pattern.price();
            if ((empty || sum > 0) && ratio > most) {
                best = pattern;
                most = ratio;
            }
        }
        return best;
    }

    private double sum(Pattern pattern) {
        double sum = 0;
        for (int n = 0; n < pattern.kinds().length; n++) {
            sum += value[pattern.kinds()[n]] * pattern.counts()[n];
        }
        return sum;
    }

    /** Moves each value towards the share that its items have of the price of their blocks. */
    private void correct(List<Pattern> blocks) {
        double[] shares = new double[value.length];
        int[] counts = new int[value.length];
        double price = 0;
        double worth = 0;
        for (Pattern pattern : blocks) {
            price += pattern.price() / unit;
            worth += sum(pattern);
        }
        for (Pattern pattern : blocks) {
            double sum = sum(pattern);
            for (int n = 0; n < pattern.kinds().length; n++) {
                int k = pattern.kinds()[n];
                double share = value[k] / sum * pattern.price() / unit * worth / price;
                shares[k] += share * pattern.counts()[n];
                counts[k] += pattern.counts()[n];
            }
        }
        for (int k = 0; k < value.length; k++) {
            value[k] += CORRECTION * (shares[k] / counts[k] - value[k]);
        }
    }

    private void addSpares(List<Pattern> blocks) {
        int missing = positions;
        for (Pattern pattern : blocks) {
            missing -= table.positions[pattern.form()];
        }
        int[] none = new int[kinds.size()];
        while (missing > 0) {
            int best = table.firstUnnamed();
            for (int f = best + 1; f < table.size(); f++) {
                if (pricePerMissing(f, missing) < pricePerMissing(best, missing)) {
                    best = f;
                }
            }
            blocks.add(Pattern.of(best, none, kinds, table));
            missing -= table.positions[best];
        }
    }

    private double pricePerMissing(int form, int missing) {
        double price = table.price[form] + (double) table.plug[form] * table.positions[form];
        return price / Math.min(missing, table.positions[form]);
    }
}
