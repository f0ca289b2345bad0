package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * An answer that is always in hand, rarely the cheapest: block after block, the form that takes
 * what is left at the least price a position, the hardest items first.
 */
final class GreedyFilling {

    private final Site site;
    private final FormTable table;
    private final List<Integer> left = new ArrayList<>();
    private final List<Integer> forms = new ArrayList<>();
    private final int[] blockOf;

    private GreedyFilling(Site site) {
        this.site = site;
        table = site.table;
        blockOf = new int[site.size()];
        Comparator<Integer> hardestFirst =
                Comparator.comparing((Integer i) -> !site.relay[i])
                        .thenComparingInt(i -> site.takers[i].count)
                        .thenComparingLong(i -> -site.current[i]);
        for (int i : Indexes.sorted(site.size(), hardestFirst)) {
            left.add(i);
        }
    }

    static Filling fill(Site site, int sparePositions) {
        GreedyFilling greedy = new GreedyFilling(site);
        greedy.openNamedBlocks();
        greedy.placeItems();
        greedy.addSpares(sparePositions);
        int[] forms = new int[greedy.forms.size()];
        for (int b = 0; b < forms.length; b++) {
            forms[b] = greedy.forms.get(b);
        }
        Filling filling = new Filling(site, forms);
        for (int i = 0; i < site.size(); i++) {
            filling.put(i, greedy.blockOf[i]);
        }
        return filling;
    }

    /** Each with the first form that holds what names it, and what else goes in. */
    private void openNamedBlocks() {
        for (int f = 0; f < table.firstUnnamed(); f = table.nextStart(f)) {
            List<Integer> own = new ArrayList<>();
            List<Integer> others = new ArrayList<>();
            for (int i : left) {
                if (site.takes(f, i)) {
                    (site.items.get(i).place().isPresent() ? own : others).add(i);
                }
            }
            Filling block = new Filling(site, new int[] {f});
            own.addAll(others);
            for (int i : own) {
                if (block.hasRoom(i, 0) && block.hasCurrent(i, 0)) {
                    block.put(i, 0);
                    blockOf[i] = forms.size();
                    left.remove(Integer.valueOf(i));
                }
            }
            forms.add(f);
        }
    }

    private void placeItems() {
        while (!left.isEmpty()) {
            int best = -1;
            long bestPrice = 0;
            int bestWidth = 1;
            List<Integer> bestItems = List.of();
            for (int f = table.firstUnnamed(); f < table.size(); f++) {
                List<Integer> items = load(f);
                int width = 0;
                for (int i : items) {
                    width += site.width[i];
                }
                long price = table.price[f] + table.plug[f] * (table.positions[f] - width);
                if (width > 0 && (best < 0 || price * bestWidth < bestPrice * width)) {
                    best = f;
                    bestPrice = price;
                    bestWidth = width;
                    bestItems = items;
                }
            }
            for (int i : bestItems) {
                blockOf[i] = forms.size();
            }
            forms.add(best);
            left.removeAll(bestItems);
        }
    }

    /** What of the items left goes into one block of the form. */
    private List<Integer> load(int form) {
        Filling block = new Filling(site, new int[] {form});
        List<Integer> items = new ArrayList<>();
        for (int i : left) {
            if (block.hasRoom(i, 0) && block.hasCurrent(i, 0)) {
                block.put(i, 0);
                items.add(i);
                if (block.free(0) == 0) {
                    break;
                }
            }
        }
        return items;
    }

    private void addSpares(int sparePositions) {
        int missing = sparePositions + site.totalWidth;
        for (int f : forms) {
            missing -= table.positions[f];
        }
        while (missing > 0) {
            int best = table.firstUnnamed();
            for (int f = best + 1; f < table.size(); f++) {
                if (pricePerMissing(f, missing) < pricePerMissing(best, missing)) {
                    best = f;
                }
            }
            forms.add(best);
            missing -= table.positions[best];
        }
    }

    private double pricePerMissing(int form, int missing) {
        double price = table.price[form] + (double) table.plug[form] * table.positions[form];
        return price / Math.min(missing, table.positions[form]);
    }
}
