package org.fusewright.core.fitting;

import org.fusewright.core.fitting.BlockMultisets.BlockMultiset;
import org.fusewright.core.fitting.Discount.Most;
import org.fusewright.core.fitting.FormTable.Weights;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The blocks that cost least where there is a discount on all of them together. Lists the sets of
 * blocks of each location by a lower bound, at prices from which the {@link Most} that any blocks
 * could get is taken off, combines them, and works out what each combination costs. Exact when it
 * comes to its end, and says so. All forms have plugs of one price.
 */
final class DiscountedSearch {

    private static final int MOST_SETS = 4_000;
    private static final long LISTING_STEPS = 60_000;
    private static final long FILLING_STEPS = 20_000;
    private static final int MOST_COMBINED = 100_000;

    /**
     * @param blocks of each form, by location; none when no blocks below the limit were found
     * @param bound no blocks have a lower price; prices are of {@link Weights}
     */
    record Found(Map<String, Map<BlockForm, Integer>> blocks, long price, long bound) {}

    private final class Location {
        private final Site site;
        private final BlockMultisets multisets;
        private final long least;
        private final List<BlockMultiset> sets = new ArrayList<>();
        private final Map<BlockMultiset, Boolean> fits = new HashMap<>();

        Location(Site site) {
            this.site = site;
            multisets = new BlockMultisets(site, 0);
            least = multisets.bound();
        }

        void list(long limit) {
            Budget budget = new Budget(LISTING_STEPS);
            while (sets.size() < MOST_SETS) {
                BlockMultiset next = multisets.next(limit, budget);
                if (next == null) {
                    return;
                }
                sets.add(next);
            }
        }

        /** Counts the blocks of a set in, or out again. */
        void count(BlockMultiset set, int by) {
            for (int f = 0; f < set.counts().length; f++) {
                if (set.counts()[f] > 0) {
                    counts[numberOf(f)] += by * set.counts()[f];
                }
            }
        }

        int numberOf(int form) {
            return numbers.get(site.table.whole.get(form));
        }

        Map<BlockForm, Integer> blocks(BlockMultiset set) {
            Map<BlockForm, Integer> blocks = new HashMap<>();
            for (int f = 0; f < set.counts().length; f++) {
                if (set.counts()[f] > 0) {
                    blocks.merge(task.forms().get(numberOf(f)), set.counts()[f], Integer::sum);
                }
            }
            return blocks;
        }
    }

    private final FittingTask task;
    private final Discount discount;
    private final int mostBlocks;
    private final Weights weights;
    private final int width;
    private final Map<BlockForm, Integer> numbers = new HashMap<>();
    private final List<Location> locations = new ArrayList<>();
    private final int[] counts;
    private final List<BlockMultiset> chosen = new ArrayList<>();
    private final long fixed;
    private Map<String, Map<BlockForm, Integer>> best = Map.of();
    private long price;
    private long bound;
    private int combined;

    private DiscountedSearch(
            FittingTask task, int[] known, long limit, int mostBlocks, Discount discount) {
        this.task = task;
        this.mostBlocks = mostBlocks;
        this.discount = discount;
        price = limit;
        bound = Covers.IMPOSSIBLE;
        weights = Weights.of(task, Aim.LEAST_COST);
        width = task.items().stream().mapToInt(item -> item.width().positions()).sum();
        counts = known.clone();
        Most most = discount.mostNear(known, emptyPositions());
        Arrays.fill(counts, 0);
        fixed = most.fixedMicros() * weights.micro();
        List<BlockForm> forms = new ArrayList<>();
        for (int f = 0; f < known.length; f++) {
            BlockForm form = task.forms().get(f);
            BlockForm cheaper =
                    form.withCosts(
                            form.costMicros() - most.blockMicros()[f],
                            form.emptyPositionMicros() - most.emptyPositionMicros());
            forms.add(cheaper);
            numbers.put(cheaper, f);
        }
        for (Site site : Fitter.listSites(task.withForms(forms))) {
            locations.add(new Location(site));
        }
    }

    /**
     * @param task whose items can all be placed
     * @param known blocks that do, of each form of the task
     * @param limit a price; only a lower one is wanted
     * @param mostBlocks no more blocks than this
     */
    static Found find(
            FittingTask task, int[] known, long limit, int mostBlocks, Discount discount) {
        DiscountedSearch search = new DiscountedSearch(task, known, limit, mostBlocks, discount);
        search.run();
        return new Found(search.best, search.price, Math.min(search.price, search.bound));
    }

    /** What blocks cost, and how many they are, in one. */
    static long price(FittingTask task, int[] counts, int empty, Discount discount) {
        Weights weights = Weights.of(task, Aim.LEAST_COST);
        long micros = -discount.micros(counts, empty);
        int blocks = 0;
        for (int f = 0; f < counts.length; f++) {
            micros += counts[f] * task.forms().get(f).costMicros();
            blocks += counts[f];
        }
        micros += empty * task.forms().getFirst().emptyPositionMicros();
        return micros * weights.micro() + blocks * weights.block();
    }

    private int emptyPositions() {
        int empty = -width;
        for (int f = 0; f < counts.length; f++) {
            empty += counts[f] * task.forms().get(f).positions();
        }
        return empty;
    }

    private void run() {
        long least = leastOfAll();
        if (least >= price) {
            return;
        }
        for (Location location : locations) {
            location.list(location.least + price - least);
            // A set that was not listed costs so much with the cheapest of all others.
            bound = Math.min(bound, least - location.least + location.multisets.bound());
        }
        combineFrom(0, least);
        if (combined >= MOST_COMBINED) {
            bound = Math.min(bound, least);
        }
    }

    /**
     * @param atLeast price of the sets chosen so far and the cheapest of all other locations
     */
    private void combineFrom(int next, long atLeast) {
        if (next == locations.size()) {
            combined++;
            look();
            return;
        }
        Location location = locations.get(next);
        for (BlockMultiset set : location.sets) {
            long here = atLeast - location.least + set.bound();
            if (here >= price || combined >= MOST_COMBINED) {
                return;
            }
            location.count(set, 1);
            chosen.add(set);
            combineFrom(next + 1, here);
            chosen.removeLast();
            location.count(set, -1);
        }
    }

    private void look() {
        int empty = emptyPositions();
        int blocks = Arrays.stream(counts).sum();
        if (empty < task.sparePositions() || blocks > mostBlocks) {
            return;
        }
        long here = price(task, counts, empty, discount);
        if (here >= price) {
            return;
        }
        for (int l = 0; l < chosen.size(); l++) {
            if (!fits(locations.get(l), chosen.get(l))) {
                return;
            }
        }
        price = here;
        best = new HashMap<>();
        for (int l = 0; l < chosen.size(); l++) {
            Location location = locations.get(l);
            best.put(location.site.location, location.blocks(chosen.get(l)));
        }
    }

    /** Whether the set can be filled; where that stays open, the bound stays below its price. */
    private boolean fits(Location location, BlockMultiset set) {
        Boolean known = location.fits.get(set);
        if (known != null) {
            return known;
        }
        Packing.Outcome outcome =
                Packing.fill(
                        location.site,
                        set.counts(),
                        Covers.IMPOSSIBLE,
                        Covers.IMPOSSIBLE,
                        FILLING_STEPS,
                        new Budget(FILLING_STEPS));
        boolean fits = outcome.filling() != null;
        if (!fits && !outcome.proven()) {
            bound = Math.min(bound, set.bound() - location.least + leastOfAll());
        }
        location.fits.put(set, fits);
        return fits;
    }

    private long leastOfAll() {
        long least = -fixed;
        for (Location location : locations) {
            least += location.least;
        }
        return least;
    }
}
