package org.fusewright.core.fitting;

import org.fusewright.core.fitting.BlockMultisets.BlockMultiset;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The cheapest blocks for one location: sets of blocks in the order of their lower bound, each
 * filled exactly, until no set to come can be cheaper than the best filling found. A set that
 * resists is put aside, and taken up again with more effort when the others are through.
 */
final class LocationSearch {

    /**
     * The best filling found, and no filling has a lower price than the bound: equal to the
     * filling's own price when the search ran to its end.
     */
    record Found(Filling filling, long price, long bound) {}

    private static final long FIRST_EFFORT = 1_000;
    private static final int EFFORT_GROWTH = 10;

    private final Site site;
    private final Budget budget;
    private final BlockMultisets multisets;
    private final List<BlockMultiset> resisting = new ArrayList<>();
    private Filling best;

    /** Only fillings below it are still of interest. */
    private long price;

    private boolean improved;

    private LocationSearch(Site site, int sparePositions, Budget budget) {
        this.site = site;
        this.budget = budget;
        multisets = new BlockMultisets(site, sparePositions);
        best = GreedyFilling.fill(site, sparePositions);
        price = best.price();
    }

    static Found find(Site site, int sparePositions, Budget budget) {
        LocationSearch search = new LocationSearch(site, sparePositions, budget);
        search.takeAllInOrder();
        search.loosen();
        search.takeUpResisting();
        return new Found(search.best, search.price, search.bound());
    }

    /**
     * A filling of no higher price; empty when there is none, or when none is found in these steps.
     */
    static Optional<Filling> findAtMost(Site site, int sparePositions, long price, Budget budget) {
        LocationSearch search = new LocationSearch(site, sparePositions, budget);
        if (search.price > price) {
            search.price = price + 1;
            search.takeAllInOrder();
            search.takeUpResisting();
        }
        return search.price <= price ? Optional.of(search.best) : Optional.empty();
    }

    private void takeAllInOrder() {
        long effort = FIRST_EFFORT + 2L * site.size();
        // The other half is for the sets that resist.
        Budget part = budget.split(budget.left() / 2);
        for (BlockMultiset next = multisets.next(price, part);
                next != null;
                next = multisets.next(price, part)) {
            if (!settles(next, effort, part)) {
                resisting.add(next);
            }
        }
        budget.giveBack(part);
    }

    private void takeUpResisting() {
        long effort = FIRST_EFFORT;
        while (!resisting.isEmpty() && !budget.isSpent()) {
            effort *= EFFORT_GROWTH;
            for (BlockMultiset set : List.copyOf(resisting)) {
                if (set.bound() >= price || settles(set, effort, budget)) {
                    resisting.remove(set);
                }
            }
        }
    }

    /**
     * When nothing better than the first answer came up: a set near the bound, with one block more
     * until it can be filled. Proves nothing, but makes for a good answer.
     */
    private void loosen() {
        if (improved || bound() == price) {
            return;
        }
        BlockMultiset set = resisting.isEmpty() ? multisets.dive() : resisting.getFirst();
        long effort = FIRST_EFFORT + 2L * site.size();
        settles(set, effort, budget);
        while (!improved && set.bound() < price && !budget.isSpent()) {
            List<BlockMultiset> larger = multisets.listWithOneMore(set);
            for (BlockMultiset next : larger) {
                if (!improved && next.bound() < price) {
                    settles(next, effort, budget);
                }
            }
            set = larger.getLast();
        }
    }

    /** Fills the set; true when nothing cheaper can come of it. */
    private boolean settles(BlockMultiset set, long effort, Budget part) {
        Packing.Outcome outcome =
                Packing.fill(site, set.counts(), set.bound(), price, effort, part);
        if (outcome.filling() != null) {
            best = outcome.filling();
            price = best.price();
            improved = true;
        }
        return outcome.proven();
    }

    private long bound() {
        long bound = Math.min(price, multisets.bound());
        for (BlockMultiset set : resisting) {
            bound = Math.min(bound, set.bound());
        }
        return bound;
    }
}
