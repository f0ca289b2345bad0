package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The forms worth considering, with their figures in arrays. Price and plug price count cost first
 * and blocks second in one number: every price is multiplied by more than the number of blocks
 * there can be, and each block adds one.
 */
final class FormTable {

    /** As many forms as a long has bits: each item knows the forms that take it as a bit set. */
    private static final int MOST_FORMS = 64;

    final List<BlockForm> forms;
    final int[] positions;
    final int[] pairs;
    final long[] limit;
    final long[] price;
    final long[] plug;
    final long lowestPlug;
    final long costScale;

    private FormTable(List<BlockForm> forms, long costScale) {
        int count = forms.size();
        this.forms = forms;
        this.costScale = costScale;
        positions = new int[count];
        pairs = new int[count];
        limit = new long[count];
        price = new long[count];
        plug = new long[count];
        long lowest = Long.MAX_VALUE;
        for (int f = 0; f < count; f++) {
            BlockForm form = forms.get(f);
            positions[f] = form.positions();
            pairs[f] = form.relayPairStarts().size();
            limit[f] = MicroAmperes.limit(form.maxTotalA());
            price[f] = form.costMicros() * costScale + 1;
            plug[f] = form.emptyPositionMicros() * costScale;
            lowest = Math.min(lowest, plug[f]);
        }
        lowestPlug = lowest;
    }

    /**
     * Drops each form that another one replaces at no higher cost, and puts those that take the
     * most items first: the cheap forms at the end then have a tight bound of their own.
     */
    static FormTable of(List<FittingItem> items, List<BlockForm> all, int sparePositions) {
        List<BlockForm> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (!isReplaceable(all, i)) {
                kept.add(all.get(i));
            }
        }
        if (kept.size() > MOST_FORMS) {
            throw new IllegalArgumentException(
                    "no more than %d block forms may differ in what they take, not %d"
                            .formatted(MOST_FORMS, kept.size()));
        }
        int[] taken = new int[kept.size()];
        for (int f = 0; f < taken.length; f++) {
            for (FittingItem item : items) {
                taken[f] += kept.get(f).takes(item) ? 1 : 0;
            }
        }
        List<BlockForm> ordered = new ArrayList<>();
        Comparator<Integer> mostTakenFirst =
                Comparator.comparingInt((Integer f) -> -taken[f])
                        .thenComparingInt(f -> -kept.get(f).positions());
        for (int f : Indexes.sorted(taken.length, mostTakenFirst)) {
            ordered.add(kept.get(f));
        }
        return new FormTable(ordered, items.size() + sparePositions + 1L);
    }

    private static boolean isReplaceable(List<BlockForm> all, int index) {
        BlockForm form = all.get(index);
        for (int i = 0; i < all.size(); i++) {
            BlockForm other = all.get(i);
            if (i != index && replaces(other, form) && (i < index || !replaces(form, other))) {
                return true;
            }
        }
        return false;
    }

    private static boolean replaces(BlockForm better, BlockForm form) {
        return better.positions() == form.positions()
                && better.relayPairStarts().size() >= form.relayPairStarts().size()
                && better.clearanceMm() >= form.clearanceMm()
                && better.maxTotalA() >= form.maxTotalA()
                && better.maxPositionA() >= form.maxPositionA()
                && better.costMicros() <= form.costMicros()
                && better.emptyPositionMicros() <= form.emptyPositionMicros();
    }

    int size() {
        return forms.size();
    }

    long bitsThatTake(FittingItem item) {
        long bits = 0;
        for (int f = 0; f < forms.size(); f++) {
            if (forms.get(f).takes(item)) {
                bits |= 1L << f;
            }
        }
        return bits;
    }
}
