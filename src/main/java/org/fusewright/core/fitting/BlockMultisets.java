package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.Arrays;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * Lists sets of blocks (how many of each form) that meet all {@link Demands}, in the order of a
 * lower bound of what they cost when filled. Best first over partial sets: each set is reached in
 * one way only, by adding blocks in the order of the forms.
 */
final class BlockMultisets {

    /** How many of each form, and no filling of them costs less than the bound. */
    record BlockMultiset(int[] counts, long bound) {}

    private record Node(
            int[] counts,
            int last,
            int blocks,
            long bound,
            double[] prices,
            Kind kind,
            long order) {}

    private enum Kind {
        /** Meets all demands. */
        COMPLETE,
        /** To be extended; the bound stands on its own prices. */
        TIGHT,
        /** To be extended; the bound stands on the prices of the set it came from. */
        LOOSE
    }

    /** Some 30 MB. */
    private static final int MOST_OPEN = 200_000;

    /** Takes off what rounding leaves over when a demand is just met. */
    private static final double ROUNDING = 1e-9;

    private static final Comparator<Node> BEST_FIRST =
            Comparator.comparingLong(Node::bound)
                    .thenComparing(Node::kind)
                    .thenComparing(Comparator.comparingInt(Node::blocks).reversed())
                    .thenComparingLong(Node::order);

    private final Site site;
    private final FormTable table;
    private final Demands demands;
    private final int positionsNeeded;
    private final long[] price;
    private final double[] cost;
    private final long saved;
    private final Covers covers;
    private final Integer[] cheapestPlugFirst;
    private final PriorityQueue<Node> open = new PriorityQueue<>(BEST_FIRST);
    private long order;

    BlockMultisets(Site site, int sparePositions) {
        this.site = site;
        table = site.table;
        demands = new Demands(site, sparePositions);
        positionsNeeded = site.totalWidth + sparePositions;
        price = new long[table.size()];
        cost = new double[table.size()];
        cheapestPlugFirst = new Integer[table.size()];
        for (int f = 0; f < table.size(); f++) {
            price[f] = table.price[f] + table.lowestPlug * table.positions[f];
            cost[f] = price[f];
            cheapestPlugFirst[f] = f;
        }
        Arrays.sort(cheapestPlugFirst, Comparator.comparingLong(f -> table.plug[f]));
        saved = table.lowestPlug * site.totalWidth;
        covers = new Covers(table, price, positionsNeeded, site.relays);
        tighten(root());
    }

    /** No set that is still to come costs less. */
    long bound() {
        Node first = open.peek();
        return first == null ? Covers.IMPOSSIBLE : first.bound;
    }

    /** The next set below the limit; null when there is none, or no step or memory is left. */
    @Nullable BlockMultiset next(long limit, Budget budget) {
        while (bound() < limit && open.size() < MOST_OPEN && budget.step()) {
            Node node = open.remove();
            switch (node.kind) {
                case COMPLETE -> {
                    return new BlockMultiset(node.counts, node.bound);
                }
                case LOOSE -> tighten(node);
                case TIGHT -> extend(node, limit);
            }
        }
        return null;
    }

    private Node root() {
        double[] free = new double[demands.need.length];
        return new Node(new int[table.size()], 0, 0, 0, free, Kind.LOOSE, 0);
    }

    private void tighten(Node node) {
        double[] asked = asked(node.counts);
        double[] prices = Prices.find(demands.give, asked, cost, node.last);
        long bound = Math.max(node.bound, bound(node.counts, node.last, asked, prices));
        push(node.counts, node.last, node.blocks, prices, Kind.TIGHT, bound);
    }

    private static int[] withOneMore(int[] counts, int form) {
        int[] more = counts.clone();
        more[form]++;
        return more;
    }

    private static boolean isMet(double[] asked) {
        for (double left : asked) {
            if (left > ROUNDING) {
                return false;
            }
        }
        return true;
    }

    private void extend(Node node, long limit) {
        for (int f = node.last; f < end(node.last); f++) {
            int[] counts = withOneMore(node.counts, f);
            int last = after(f);
            double[] asked = asked(counts);
            if (!table.isNamed(last) && isMet(asked)) {
                long bound = Math.max(node.bound, filledAtLeast(counts));
                if (bound < limit) {
                    push(counts, last, node.blocks + 1, node.prices, Kind.COMPLETE, bound);
                }
            }
            long bound = Math.max(node.bound, bound(counts, last, asked, node.prices));
            if (bound < limit) {
                push(counts, last, node.blocks + 1, node.prices, Kind.LOOSE, bound);
            }
        }
    }

    /** A named block has one of its own forms; then come the forms for any number. */
    private int end(int last) {
        return table.isNamed(last) ? table.nextStart(last) : table.size();
    }

    private int after(int form) {
        return table.isNamed(form) ? table.nextStart(form) : form;
    }

    private void push(int[] counts, int last, int blocks, double[] prices, Kind kind, long bound) {
        open.add(new Node(counts, last, blocks, bound, prices, kind, order++));
    }

    private double[] asked(int[] counts) {
        double[] asked = demands.need.clone();
        for (int k = 0; k < asked.length; k++) {
            for (int f = 0; f < counts.length; f++) {
                asked[k] -= counts[f] * demands.give[k][f];
            }
        }
        return asked;
    }

    private long bound(int[] counts, int from, double[] asked, double[] prices) {
        long spent = -saved;
        int positions = positionsNeeded;
        int pairs = site.relays;
        for (int f = 0; f < counts.length; f++) {
            spent += counts[f] * price[f];
            positions -= counts[f] * table.positions[f];
            pairs -= counts[f] * table.pairs[f];
        }
        long covered = covers.least(from, positions, pairs);
        if (covered >= Covers.IMPOSSIBLE || !canBring(asked, from)) {
            return Covers.IMPOSSIBLE;
        }
        return spent + Math.max(covered, (long) Math.ceil(Prices.worth(prices, asked)));
    }

    private boolean canBring(double[] asked, int from) {
        for (int k = 0; k < asked.length; k++) {
            boolean brought = asked[k] <= ROUNDING;
            for (int f = from; f < table.size() && !brought; f++) {
                brought = demands.give[k][f] > 0;
            }
            if (!brought) {
                return false;
            }
        }
        return true;
    }

    /** What the set costs when its empty positions are those with the cheapest plugs. */
    private long filledAtLeast(int[] counts) {
        long sum = 0;
        int empty = -site.totalWidth;
        for (int f = 0; f < counts.length; f++) {
            sum += counts[f] * table.price[f];
            empty += counts[f] * table.positions[f];
        }
        for (int f : cheapestPlugFirst) {
            int here = Math.min(empty, counts[f] * table.positions[f]);
            sum += here * table.plug[f];
            empty -= here;
        }
        return sum;
    }
}
