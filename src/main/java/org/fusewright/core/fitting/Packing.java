package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Puts the items of a location into given blocks, at the least price for plugs; exact, by depth-first
 * search. Equal blocks and equal items are tried once, and a state that failed is not entered again.
 */
final class Packing {

    /** What is hard in one order of the items is often found at once in another. */
    private enum Order {
        STRUCTURE,
        CURRENT
    }

    private record Attempt(Order order, long steps) {}

    private static final List<Attempt> ATTEMPTS =
            List.of(
                    new Attempt(Order.CURRENT, 1_000),
                    new Attempt(Order.STRUCTURE, 1_000),
                    new Attempt(Order.CURRENT, 100_000));

    private static final int STEPS_WITHOUT_MEMORY = 64;
    private static final int MOST_REMEMBERED = 200_000;

    private final Site site;
    private final FormTable table;
    private final long target;
    private final boolean currentsMatter;
    private final boolean plugsDiffer;
    private final Order order;
    private final int[] sequence;
    private final long[] currentFrom;
    private final long[] largestFrom;
    private final int[] widthFrom;
    private final int[] shares;
    private final Filling filling;
    private final Set<List<Long>> failed = new HashSet<>();
    private final Budget budget;
    private int steps;
    private boolean cutOff;
    private long best;
    private @Nullable Filling found;

    /** The best filling below the limit, if there is one; proven when the search ran to its end. */
    record Outcome(@Nullable Filling filling, boolean proven) {}

    /**
     * Fills the blocks.
     *
     * @param counts blocks by form
     * @param target no filling has a lower price
     * @param limit only fillings of a lower price are wanted
     */
    static Outcome fill(Site site, int[] counts, long target, long limit, Budget budget) {
        int[] forms =
                IntStream.range(0, counts.length)
                        .flatMap(f -> IntStream.generate(() -> f).limit(counts[f]))
                        .toArray();
        Outcome roomOnly =
                new Packing(site, forms, target, limit, false, Order.STRUCTURE, budget).run();
        if (roomOnly.filling == null ? roomOnly.proven : roomOnly.filling.isWithinCurrents()) {
            return roomOnly;
        }
        for (Attempt attempt : ATTEMPTS) {
            Budget part = budget.split(attempt.steps);
            Outcome outcome =
                    new Packing(site, forms, target, limit, true, attempt.order, part).run();
            budget.giveBack(part);
            if (outcome.proven || attempt == ATTEMPTS.getLast()) {
                return outcome;
            }
        }
        throw new AssertionError("the last attempt returns");
    }

    private Packing(
            Site site,
            int[] forms,
            long target,
            long limit,
            boolean currentsMatter,
            Order order,
            Budget budget) {
        this.site = site;
        this.target = target;
        this.currentsMatter = currentsMatter;
        this.order = order;
        this.budget = budget;
        table = site.table;
        best = limit;
        filling = new Filling(site, forms);
        plugsDiffer = Arrays.stream(forms).mapToLong(f -> table.plug[f]).distinct().count() > 1;
        sequence = IntStream.range(0, site.size()).boxed().sorted(hardestFirst()).mapToInt(i -> i).toArray();
        currentFrom = new long[sequence.length + 1];
        largestFrom = new long[sequence.length + 1];
        widthFrom = new int[sequence.length + 1];
        for (int s = sequence.length - 1; s >= 0; s--) {
            int item = sequence[s];
            currentFrom[s] = currentFrom[s + 1] + site.current[item];
            largestFrom[s] = Math.max(largestFrom[s + 1], site.current[item]);
            widthFrom[s] = widthFrom[s + 1] + site.width[item];
        }
        shares = new int[table.size()];
        for (int f = 0; f < shares.length; f++) {
            for (int i = 0; i < site.size(); i++) {
                shares[f] += site.takes(f, i) ? 1 : 0;
            }
        }
    }

    private Comparator<Integer> hardestFirst() {
        Comparator<Integer> byStructure =
                Comparator.comparing((Integer i) -> !site.relay[i])
                        .thenComparing(i -> Long.bitCount(site.takers[i]))
                        .thenComparing(i -> site.takers[i]);
        Comparator<Integer> byCurrent = Comparator.comparing(i -> -site.current[i]);
        return order == Order.CURRENT
                ? byCurrent.thenComparing(byStructure)
                : byStructure.thenComparing(byCurrent);
    }

    private Outcome run() {
        place(0);
        return new Outcome(found, !cutOff || (found != null && best <= target));
    }

    /** True when the search is over: nothing better can be found, or the budget is spent. */
    private boolean place(int at) {
        if (at == sequence.length) {
            long price = filling.price();
            if (price < best) {
                best = price;
                found = filling.copy();
            }
            return best <= target;
        }
        if (!budget.step()) {
            cutOff = true;
            return true;
        }
        steps++;
        if (isHopeless(at)) {
            return false;
        }
        boolean remember = steps > STEPS_WITHOUT_MEMORY;
        List<Long> state = remember ? state(at) : List.of();
        if (failed.contains(state)) {
            return false;
        }
        int item = sequence[at];
        // Equal items in the order of their blocks, but not with memory: a state would then mean more
        // than the blocks it is looked up by.
        int first = !remember && isSameAsBefore(at) ? filling.blockOf[sequence[at - 1]] : 0;
        for (int block : candidates(item, first)) {
            filling.put(item, block);
            boolean over = place(at + 1);
            filling.take(item);
            if (over) {
                return true;
            }
        }
        if (remember && failed.size() < MOST_REMEMBERED) {
            failed.add(state);
        }
        return false;
    }

    private boolean isHopeless(int at) {
        if (plugsDiffer && atLeast(at) >= best) {
            return true;
        }
        if (!currentsMatter) {
            return false;
        }
        long room = 0;
        for (int b = 0; b < filling.blocks(); b++) {
            long here = filling.free(b) * largestFrom[at];
            room += Math.min(here, filling.spareCurrent(b));
            if (room >= currentFrom[at]) {
                return false;
            }
        }
        return room < currentFrom[at];
    }

    /** The price when all that is still to come saves the dearest plugs there are. */
    private long atLeast(int at) {
        long price = filling.price();
        int left = widthFrom[at];
        int[] free = new int[table.size()];
        for (int b = 0; b < filling.blocks(); b++) {
            free[filling.form[b]] += filling.free(b);
        }
        while (left > 0) {
            int dearest = -1;
            for (int f = 0; f < free.length; f++) {
                if (free[f] > 0 && (dearest < 0 || table.plug[f] > table.plug[dearest])) {
                    dearest = f;
                }
            }
            if (dearest < 0) {
                return Long.MAX_VALUE;
            }
            int here = Math.min(left, free[dearest]);
            price -= here * table.plug[dearest];
            left -= here;
            free[dearest] = 0;
        }
        return price;
    }

    /** Blocks for the next item, the likeliest first, one of each kind that is in the same state. */
    private int[] candidates(int item, int first) {
        int[] blocks = new int[filling.blocks()];
        int count = 0;
        for (int b = first; b < blocks.length; b++) {
            if (filling.hasRoom(item, b)
                    && (!currentsMatter || filling.hasCurrent(item, b))
                    && !hasTwin(blocks, count, b)) {
                blocks[count++] = b;
            }
        }
        Integer[] sorted = new Integer[count];
        for (int c = 0; c < count; c++) {
            sorted[c] = blocks[c];
        }
        Arrays.sort(sorted, likeliestFirst());
        int[] candidates = new int[count];
        for (int c = 0; c < count; c++) {
            candidates[c] = sorted[c];
        }
        return candidates;
    }

    private boolean isSameAsBefore(int at) {
        if (at == 0) {
            return false;
        }
        int item = sequence[at];
        int before = sequence[at - 1];
        return site.relay[item] == site.relay[before]
                && site.takers[item] == site.takers[before]
                && (!currentsMatter || site.current[item] == site.current[before]);
    }

    private boolean hasTwin(int[] blocks, int count, int block) {
        for (int c = 0; c < count; c++) {
            int other = blocks[c];
            if (filling.form[other] == filling.form[block]
                    && filling.devices(other) == filling.devices(block)
                    && filling.relays(other) == filling.relays(block)
                    && (!currentsMatter
                            || filling.spareCurrent(other) == filling.spareCurrent(block))) {
                return true;
            }
        }
        return false;
    }

    private Comparator<Integer> likeliestFirst() {
        Comparator<Integer> byForm =
                Comparator.comparing((Integer b) -> -table.plug[filling.form[b]])
                        .thenComparing(b -> shares[filling.form[b]]);
        Comparator<Integer> byCurrent =
                order == Order.CURRENT
                        ? Comparator.comparing(filling::spareCurrent)
                        : Comparator.comparing(b -> -filling.spareCurrent(b));
        return currentsMatter ? byForm.thenComparing(byCurrent) : byForm;
    }

    private List<Long> state(int at) {
        Long[] blocks = new Long[filling.blocks() + 1];
        for (int b = 0; b < filling.blocks(); b++) {
            long shape = (filling.form[b] * 32L + filling.devices(b)) * 32L + filling.relays(b);
            blocks[b] =
                    currentsMatter
                            ? shape << 47 | Math.min(filling.spareCurrent(b), (1L << 47) - 1)
                            : shape;
        }
        Arrays.sort(blocks, 0, filling.blocks());
        blocks[filling.blocks()] = (long) at;
        return List.of(blocks);
    }
}
