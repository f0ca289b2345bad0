package org.fusewright.core.fitting;

import org.fusewright.core.fitting.BlockMultisets.BlockMultiset;
import org.jspecify.annotations.Nullable;

/**
 * The cheapest blocks for one location: sets of blocks in the order of their lower bound, each filled
 * exactly, until no set to come can be cheaper than the best filling found.
 */
final class LocationSearch {

    /**
     * The best filling found, and no filling has a lower price than the bound: equal to the filling's
     * own price when the search ran to its end.
     */
    record Found(Filling filling, long price, long bound) {}

    private LocationSearch() {}

    static Found find(Site site, int sparePositions, Budget budget) {
        Filling best = GreedyFilling.fill(site, sparePositions);
        long price = best.price();
        long unproven = Long.MAX_VALUE;
        BlockMultisets multisets = new BlockMultisets(site, sparePositions);
        for (@Nullable BlockMultiset next = multisets.next(price, budget);
                next != null;
                next = multisets.next(price, budget)) {
            Packing.Outcome outcome =
                    Packing.fill(site, next.counts(), next.bound(), price, budget);
            if (!outcome.proven()) {
                unproven = Math.min(unproven, next.bound());
            }
            if (outcome.filling() != null) {
                best = outcome.filling();
                price = best.price();
            }
        }
        long bound = Math.min(price, Math.min(unproven, multisets.bound()));
        return new Found(best, price, bound);
    }
}
