package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Puts the items of a location into given blocks, at the least price for plugs; exact, by
 * depth-first search. Equal blocks and equal items are tried once, and a state that failed is not
 * entered again.
 */
final class Packing {

    /** What is hard in one order of the items is often found at once in another. */
    private enum Order {
        /** Relays first, then what few forms take. */
        STRUCTURE,
        /** The highest current first. */
        CURRENT
    }

    private static final int STEPS_WITHOUT_MEMORY = 64;

    /** Blocks in all states together: some 30 MB. */
    private static final long MOST_REMEMBERED = 3_000_000;

    /** More than 24 positions ever carry; leaves room for 4,000 forms that differ. */
    private static final int CURRENT_BITS = 42;

    private static final long MOST_CURRENT = (1L << CURRENT_BITS) - 1;

    private static final State NOTHING = new State(new long[0]);

    private final Site site;
    private final FormTable table;
    private final long target;
    private final boolean currentsMatter;
    private final boolean plugsDiffer;
    private final Order order;
    private final int[] sequence;

    /** The form of each block, numbered from 0 among those that are used. */
    private final int[] formNumber;

    private final long[] currentFrom;
    private final long[] largestFrom;
    private final int[] widthFrom;

    /** How many of the items each form takes. */
    private final int[] shares;

    private final Comparator<Integer> likeliestFirst;
    private final Filling filling;
    private final Set<State> failed = new HashSet<>();
    private final Budget budget;
    private int steps;
    private boolean cutOff;
    private long best;
    private @Nullable Filling found;

    /** The best filling below the limit, if there is one; proven when the search ran to its end. */
    record Outcome(@Nullable Filling filling, boolean proven) {}

    private record Attempt(
            Site site, int[] forms, long target, long limit, long effort, Budget budget) {

        Outcome with(boolean currentsMatter, Order order) {
            Budget part = budget.split(effort);
            Outcome outcome = new Packing(this, currentsMatter, order, part).run();
            budget.giveBack(part);
            return outcome;
        }
    }

    /**
     * Fills the blocks.
     *
     * @param counts blocks by form
     * @param target no filling has a lower price
     * @param limit only fillings of a lower price are wanted
     * @param effort steps for each of up to three ways to go about it
     */
    static Outcome fill(
            Site site, int[] counts, long target, long limit, long effort, Budget budget) {
        int blocks = 0;
        for (int count : counts) {
            blocks += count;
        }
        int[] forms = new int[blocks];
        int next = 0;
        for (int f = 0; f < counts.length; f++) {
            Arrays.fill(forms, next, next + counts[f], f);
            next += counts[f];
        }
        Attempt attempt = new Attempt(site, forms, target, limit, effort, budget);
        // Most sets that cannot be filled fail without a look at currents, and fail fast so.
        Outcome outcome = attempt.with(false, Order.STRUCTURE);
        if (outcome.filling == null ? outcome.proven : outcome.filling.isWithinCurrents()) {
            return outcome;
        }
        outcome = attempt.with(true, Order.CURRENT);
        if (outcome.proven || outcome.filling != null) {
            return outcome;
        }
        return attempt.with(true, Order.STRUCTURE);
    }

    private Packing(Attempt attempt, boolean currentsMatter, Order order, Budget budget) {
        site = attempt.site;
        target = attempt.target;
        best = attempt.limit;
        this.currentsMatter = currentsMatter;
        this.order = order;
        this.budget = budget;
        table = site.table;
        filling = new Filling(site, attempt.forms);
        plugsDiffer = plugsDiffer(attempt.forms);
        formNumber = new int[attempt.forms.length];
        for (int b = 1; b < formNumber.length; b++) {
            boolean same = attempt.forms[b] == attempt.forms[b - 1];
            formNumber[b] = formNumber[b - 1] + (same ? 0 : 1);
        }
        sequence = Indexes.sorted(site.size(), hardestFirst());
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
        likeliestFirst = likeliestFirst();
    }

    private boolean plugsDiffer(int[] forms) {
        for (int f : forms) {
            if (table.plug[f] != table.plug[forms[0]]) {
                return true;
            }
        }
        return false;
    }

    private Comparator<Integer> hardestFirst() {
        Comparator<Integer> byStructure =
                Comparator.comparing((Integer i) -> !site.relay[i])
                        .thenComparingInt(i -> site.takers[i].count)
                        .thenComparingInt(i -> site.takers[i].number);
        Comparator<Integer> byCurrent = Comparator.comparingLong(i -> -site.current[i]);
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
        State state = remember ? state() : NOTHING;
        if (failed.contains(state)) {
            return false;
        }
        int item = sequence[at];
        // Equal items in the order of their blocks. Not with memory: whether a state fails would
        // then hang on more than the blocks it is looked up by.
        int first = !remember && isSameAsBefore(at) ? filling.blockOf[sequence[at - 1]] : 0;
        for (int block : candidates(item, first)) {
            filling.put(item, block);
            boolean over = place(at + 1);
            filling.take(item);
            if (over) {
                return true;
            }
        }
        if (remember && failed.size() * (long) filling.blocks() < MOST_REMEMBERED) {
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

    /**
     * Blocks for the next item, the likeliest first, one of each kind that is in the same state.
     */
    private List<Integer> candidates(int item, int first) {
        List<Integer> blocks = new ArrayList<>();
        for (int b = first; b < filling.blocks(); b++) {
            if (filling.hasRoom(item, b)
                    && (!currentsMatter || filling.hasCurrent(item, b))
                    && !hasTwin(blocks, b)) {
                blocks.add(b);
            }
        }
        blocks.sort(likeliestFirst);
        return blocks;
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

    private boolean hasTwin(List<Integer> blocks, int block) {
        for (int other : blocks) {
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
                Comparator.comparingLong((Integer b) -> -table.plug[filling.form[b]])
                        .thenComparingInt(b -> shares[filling.form[b]]);
        int sign = order == Order.CURRENT ? 1 : -1;
        return currentsMatter
                ? byForm.thenComparingLong(b -> sign * filling.spareCurrent(b))
                : byForm;
    }

    /** The blocks in any order; how many items they hold says which item comes next. */
    private State state() {
        long[] state = new long[filling.blocks()];
        for (int b = 0; b < state.length; b++) {
            long shape = (formNumber[b] * 32L + filling.devices(b)) * 32L + filling.relays(b);
            long current = Math.min(filling.spareCurrent(b), MOST_CURRENT);
            state[b] = currentsMatter ? shape << CURRENT_BITS | current : shape;
        }
        Arrays.sort(state);
        return new State(state);
    }

    /** What the rest of the search depends on; equal by its content. */
    private record State(long[] cells) {

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof State state && Arrays.equals(cells, state.cells);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(cells);
        }
    }
}
