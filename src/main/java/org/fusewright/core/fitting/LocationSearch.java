package org.fusewright.core.fitting;

import org.fusewright.core.fitting.BlockMultisets.BlockMultiset;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The cheapest blocks for one location: sets of blocks in the order of their lower bound, each
 * filled exactly, until no set to come can be cheaper than the best filling found. Where that does
 * not come to an end soon, {@link PatternSearch} goes on.
 */
final class LocationSearch {

    /**
     * The best filling found, and no filling has a lower price than the bound: equal to the
     * filling's own price when the search ran to its end.
     */
    record Found(Filling filling, long price, long bound) {

        /** The better of two answers, and the higher of two bounds. */
        Found with(Found other) {
            Found better = other.price < price ? other : this;
            return new Found(better.filling, better.price, Math.max(bound, other.bound));
        }
    }

    /** Settle nearly every job; what they leave open is left to patterns. */
    private static final long FIRST_STEPS = 20_000;

    private static final long FIRST_EFFORT = 1_000;
    private static final int EFFORT_GROWTH = 10;

    private final Site site;
    private final Budget budget;
    private final int sparePositions;
    private long patternBound;
    private final BlockMultisets multisets;
    private final List<BlockMultiset> resisting = new ArrayList<>();
    private Filling best;

    /** Only fillings below it are still of interest. */
    private long price;

    private LocationSearch(Site site, int sparePositions, Budget budget) {
        this.site = site;
        this.budget = budget;
        this.sparePositions = sparePositions;
        multisets = new BlockMultisets(site, sparePositions);
        best = GreedyFilling.fill(site, sparePositions);
        price = best.price();
    }

    static Found find(Site site, int sparePositions, Budget budget) {
        LocationSearch search = new LocationSearch(site, sparePositions, budget);
        search.takeAllInOrder(FIRST_STEPS);
        if (search.bound() < search.price && !budget.isSpent()) {
            search.usePatterns();
        }
        return new Found(search.best, search.price, search.bound());
    }

    /**
     * A filling of no higher price; empty when there is none, or when none is found in these steps.
     */
    static Optional<Filling> findAtMost(Site site, int sparePositions, long price, Budget budget) {
        LocationSearch search = new LocationSearch(site, sparePositions, budget);
        if (search.price > price) {
            search.price = price + 1;
            search.takeAllInOrder(Long.MAX_VALUE);
            search.takeUpResisting();
        }
        return search.price <= price ? Optional.of(search.best) : Optional.empty();
    }

    private void takeAllInOrder(long most) {
        long effort = FIRST_EFFORT + 2L * site.size();
        // The rest is for the sets that resist.
        Budget part = budget.split(Math.min(most, budget.left() / 2));
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

    private void usePatterns() {
        PatternSearch.Outcome outcome =
                PatternSearch.find(site, sparePositions, best, price, bound(), budget);
        if (outcome.filling() != null) {
            best = outcome.filling();
            price = best.price();
        }
        patternBound = outcome.bound();
    }

    /** Fills the set; true when nothing cheaper can come of it. */
    private boolean settles(BlockMultiset set, long effort, Budget part) {
        Packing.Outcome outcome =
                Packing.fill(site, set.counts(), set.bound(), price, effort, part);
        if (outcome.filling() != null) {
            best = outcome.filling();
            price = best.price();
        }
        return outcome.proven();
    }

    private long bound() {
        long bound = Math.min(price, multisets.bound());
        for (BlockMultiset set : resisting) {
            bound = Math.min(bound, set.bound());
        }
        return Math.max(bound, Math.min(price, patternBound));
    }
}
