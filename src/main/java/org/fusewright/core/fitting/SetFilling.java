package org.fusewright.core.fitting;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Fills a given set of blocks: each named block is one of them. */
final class SetFilling {

    private final Site site;
    private final FormTable table;
    private final Budget budget;
    private final Map<BlockForm, Integer> left;
    private final int[] counts;

    private SetFilling(Site site, Map<BlockForm, Integer> blocks, Budget budget) {
        this.site = site;
        this.budget = budget;
        table = site.table;
        left = new HashMap<>(blocks);
        counts = new int[table.size()];
    }

    /**
     * @param blocks of each form, as a whole
     */
    static Optional<Filling> find(Site site, Map<BlockForm, Integer> blocks, Budget budget) {
        return new SetFilling(site, blocks, budget).nameFrom(0);
    }

    /** Tries every form for the named blocks from a form of the table on. */
    private Optional<Filling> nameFrom(int first) {
        if (first == table.firstUnnamed()) {
            return fillUnnamed();
        }
        int end = table.nextStart(first);
        for (int f = first; f < end; f++) {
            BlockForm whole = table.whole.get(f);
            if (left.getOrDefault(whole, 0) > 0) {
                left.merge(whole, -1, Integer::sum);
                counts[f] = 1;
                Optional<Filling> filling = nameFrom(end);
                counts[f] = 0;
                left.merge(whole, 1, Integer::sum);
                if (filling.isPresent()) {
                    return filling;
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Filling> fillUnnamed() {
        for (int f = table.firstUnnamed(); f < table.size(); f++) {
            counts[f] = left.getOrDefault(table.whole.get(f), 0);
        }
        Packing.Outcome outcome =
                Packing.fill(
                        site, counts, Covers.IMPOSSIBLE, Covers.IMPOSSIBLE, budget.left(), budget);
        Arrays.fill(counts, table.firstUnnamed(), counts.length, 0);
        return Optional.ofNullable(outcome.filling());
    }
}
