package org.fusewright.core.fitting;

import org.fusewright.core.fitting.LocationSearch.Found;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToLongFunction;

/**
 * Shares the spare positions out over the locations: the least sum of each location's price for its
 * share, exact (a min-plus convolution of prices, and one of bounds).
 */
record SpareSplit(List<Part> parts, long bound) {

    /**
     * @param spare how many of the spare positions are at this location
     */
    record Part(Filling filling, int spare) {}

    /** What was found for a share of a location, and the steps it was given. */
    private record Tried(Found found, long steps) {}

    /** The share of each location in the split of the least sum, by location; and that sum. */
    private record Split(int[] shares, long sum) {}

    private static final int EFFORT_GROWTH = 4;

    static SpareSplit find(List<Site> sites, int sparePositions, long stepsALocation) {
        int least = sites.size() == 1 ? sparePositions : 0;
        Budget budget = new Budget(stepsALocation * sites.size());
        long steps = stepsALocation / (sparePositions - least + 1);
        Tried[][] tried = new Tried[sites.size()][];
        for (int s = 0; s < tried.length; s++) {
            tried[s] = byShare(sites.get(s), least, sparePositions, budget, steps);
        }
        Split cheapest = split(tried, least, sparePositions, Found::price);
        Split lowest = split(tried, least, sparePositions, Found::bound);
        while (lowest.sum < cheapest.sum && tryHarder(sites, tried, lowest, budget)) {
            cheapest = split(tried, least, sparePositions, Found::price);
            lowest = split(tried, least, sparePositions, Found::bound);
        }
        List<Part> parts = new ArrayList<>();
        for (int s = 0; s < tried.length; s++) {
            int share = cheapest.shares[s];
            parts.add(new Part(tried[s][share].found.filling(), share));
        }
        return new SpareSplit(parts, lowest.sum);
    }

    private static Split split(
            Tried[][] tried, int least, int sparePositions, ToLongFunction<Found> of) {
        int shares = sparePositions + 1;
        long[] sums = new long[shares];
        // Before the first location there is nowhere to leave a position free.
        Arrays.fill(sums, 1, shares, Covers.IMPOSSIBLE);
        int[][] shareOf = new int[tried.length][shares];
        for (int s = 0; s < tried.length; s++) {
            long[] next = new long[shares];
            Arrays.fill(next, Covers.IMPOSSIBLE);
            for (int total = 0; total < shares; total++) {
                for (int share = least; share <= total; share++) {
                    long sum = sums[total - share] + of.applyAsLong(tried[s][share].found);
                    if (sum < next[total]) {
                        next[total] = sum;
                        shareOf[s][total] = share;
                    }
                }
            }
            sums = next;
        }
        int[] split = new int[tried.length];
        int left = sparePositions;
        for (int s = tried.length - 1; s >= 0; s--) {
            split[s] = shareOf[s][left];
            left -= split[s];
        }
        return new Split(split, sums[sparePositions]);
    }

    /**
     * The search for each share from the least on. A filling that leaves more free than was asked
     * for is the answer for these larger shares too.
     */
    private static Tried[] byShare(Site site, int least, int most, Budget budget, long steps) {
        Tried[] tried = new Tried[most + 1];
        int share = least;
        while (share <= most) {
            Tried here = search(site, share, budget, steps);
            int free = here.found.filling().free();
            for (; share <= Math.min(most, free); share++) {
                tried[share] = here;
            }
        }
        return tried;
    }

    private static Tried search(Site site, int share, Budget budget, long steps) {
        Budget part = budget.split(steps);
        Found found = LocationSearch.find(site, share, part);
        budget.giveBack(part);
        return new Tried(found, steps);
    }

    /** Searches longer where the lowest bound is not closed; false when no step is left. */
    private static boolean tryHarder(
            List<Site> sites, Tried[][] tried, Split lowest, Budget budget) {
        for (int s = 0; s < tried.length; s++) {
            int share = lowest.shares[s];
            Tried before = tried[s][share];
            if (before.found.bound() < before.found.price() && before.steps < budget.left()) {
                Tried harder =
                        search(sites.get(s), share, budget, 1 + before.steps * EFFORT_GROWTH);
                tried[s][share] = new Tried(before.found.with(harder.found), harder.steps);
                return true;
            }
        }
        return false;
    }
}
