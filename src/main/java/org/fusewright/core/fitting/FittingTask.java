package org.fusewright.core.fitting;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * What has to be fitted, and into which block forms.
 *
 * @param items in the order of the job; at most 1,000 together with the spare positions
 * @param forms all that may be used, in any number, at any location
 * @param sparePositions positions that stay free in all blocks together, over all locations
 */
public record FittingTask(List<FittingItem> items, List<BlockForm> forms, int sparePositions) {

    /** Most items and spare positions together: keeps the sums of cost and count in a long. */
    static final int MOST_PLACES = 1_000;

    FittingTask withForms(UnaryOperator<BlockForm> change) {
        return new FittingTask(items, forms.stream().map(change).toList(), sparePositions);
    }

    FittingTask withForms(List<BlockForm> others) {
        return new FittingTask(items, others, sparePositions);
    }

    FittingTask withItems(UnaryOperator<FittingItem> change) {
        return new FittingTask(items.stream().map(change).toList(), forms, sparePositions);
    }

    FittingTask withSparePositions(int positions) {
        return new FittingTask(items, forms, positions);
    }

    public FittingTask {
        items = List.copyOf(items);
        forms = List.copyOf(forms);
        Require.range("sparePositions", sparePositions, 0, MOST_PLACES);
        Require.range("items and spare positions", items.size() + sparePositions, 0, MOST_PLACES);
        Set<String> ids = new HashSet<>();
        for (FittingItem item : items) {
            if (!ids.add(item.id())) {
                throw new IllegalArgumentException("two items have the id " + item.id());
            }
        }
    }

    /** Whether any item asks for a place of its own. */
    boolean hasPlaces() {
        for (FittingItem item : items) {
            if (item.place().isPresent()) {
                return true;
            }
        }
        return false;
    }
}
