package org.fusewright.core.fitting;

import org.fusewright.core.fitting.LocationSearch.Found;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Shares the spare positions out over the locations: the least sum of each location's price for its
 * share, exact (a min-plus convolution of prices, and one of bounds).
 */
record SpareSplit(List<Part> parts, long bound) {

    /**
     * @param spare how many of the spare positions are at this location
     */
    record Part(Filling filling, int spare) {}

    static SpareSplit find(List<Site> sites, int sparePositions, long stepsALocation) {
        int shares = sparePositions + 1;
        long[] price = new long[shares];
        long[] bound = new long[shares];
        // Before the first location there is nowhere to leave a position free.
        Arrays.fill(price, 1, shares, Covers.IMPOSSIBLE);
        Arrays.fill(bound, 1, shares, Covers.IMPOSSIBLE);
        int[][] shareOf = new int[sites.size()][shares];
        Found[][] found = new Found[sites.size()][];
        for (int s = 0; s < sites.size(); s++) {
            int least = sites.size() == 1 ? sparePositions : 0;
            found[s] = byShare(sites.get(s), least, sparePositions, new Budget(stepsALocation));
            long[] sumPrice = new long[shares];
            long[] sumBound = new long[shares];
            Arrays.fill(sumPrice, Covers.IMPOSSIBLE);
            Arrays.fill(sumBound, Covers.IMPOSSIBLE);
            for (int total = 0; total < shares; total++) {
                for (int share = least; share <= total; share++) {
                    long p = price[total - share] + found[s][share].price();
                    if (p < sumPrice[total]) {
                        sumPrice[total] = p;
                        shareOf[s][total] = share;
                    }
                    long b = bound[total - share] + found[s][share].bound();
                    sumBound[total] = Math.min(sumBound[total], b);
                }
            }
            price = sumPrice;
            bound = sumBound;
        }
        List<Part> parts = new ArrayList<>();
        int total = sparePositions;
        for (int s = sites.size() - 1; s >= 0; s--) {
            int share = shareOf[s][total];
            parts.addFirst(new Part(found[s][share].filling(), share));
            total -= share;
        }
        return new SpareSplit(parts, bound[sparePositions]);
    }

    /**
     * The search for each share from the least on. A filling that leaves more free than was asked
     * for is the answer for these larger shares too.
     */
    private static Found[] byShare(Site site, int least, int most, Budget budget) {
        Found[] found = new Found[most + 1];
        int share = least;
        while (share <= most) {
            Budget part = budget.split(budget.left() / (most - share + 1));
            Found here = LocationSearch.find(site, share, part);
            budget.giveBack(part);
            int free = here.filling().free();
            for (; share <= Math.min(most, free); share++) {
                found[share] = here;
            }
        }
        return found;
    }
}
