package org.fusewright.core.order;

import org.fusewright.core.order.PartSupply.Choice;
import org.fusewright.core.order.WaySearch.Outcome;
import org.jspecify.annotations.Nullable;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;

/**
 * The cheapest cover of all parts at once. Without minimum orders each part stands by itself; with
 * them the search decides, supplier by supplier where it matters, whether nothing is ordered there
 * or at least the minimum, and leaves out what a {@link Relaxation} shows not to pay (branch and
 * bound). Where nothing is left to decide a {@link WaySearch} looks close above the bound first,
 * since the less room there is the fewer ways come into question, and then further up.
 */
final class SupplierSearch {

    /**
     * @param bound no cover costs less; equal to the cost when that is proven
     */
    record Found(int[][] quantities, long cost, long bound) {}

    private static final long MOST_STEPS = 45_000_000;
    private static final double LEAST_ROOM = 3;
    private static final double TINY = 1e-5;

    private static final double MORE_ROOM = 2;

    /**
     * What is decided about the suppliers, and what that costs at least.
     *
     * @param room how far above the bound to look when nothing is left to decide
     */
    private record Node(
            boolean[] out,
            boolean[] forced,
            Choice[] undiscounted,
            Relaxation relaxed,
            double bound,
            double room) {

        /** To be looked at again, further up. */
        Node triedUpTo(double floor) {
            return new Node(out, forced, undiscounted, relaxed, floor, MORE_ROOM * room);
        }
    }

    private final Market market;
    private final Budget budget = new Budget(MOST_STEPS);
    private final PriorityQueue<Node> open =
            new PriorityQueue<>(Comparator.comparingDouble(Node::bound));
    private int @Nullable [][] best;
    private long bestCost = Long.MAX_VALUE;
    private double unproven = Double.POSITIVE_INFINITY;

    private SupplierSearch(Market market) {
        this.market = market;
    }

    /** Empty when the minimum orders cannot be reached in any way. */
    static Optional<Found> search(Market market) {
        return new SupplierSearch(market).search();
    }

    private Optional<Found> search() {
        boolean[] none = new boolean[market.suppliers().size()];
        add(new Choice[market.parts().size()], none, none, List.of());
        while (!open.isEmpty() && !isRuledOut(open.peek().bound())) {
            if (budget.isSpent() && best != null) {
                unproven = Math.min(unproven, open.peek().bound());
                break;
            }
            visit(open.remove());
        }
        if (best == null) {
            return Optional.empty();
        }
        long bound = (long) Math.ceil(Math.min(unproven, bestCost) - TINY);
        return Optional.of(new Found(best, bestCost, bound));
    }

    /** Notes what follows from decisions, unless it can be ruled out or covers nothing. */
    private void add(
            @Nullable Choice[] known, boolean[] out, boolean[] forced, List<long[]> covers) {
        Choice[] undiscounted = new Choice[known.length];
        double[] weights = Relaxation.weightsWithout(out);
        for (int p = 0; p < known.length; p++) {
            Choice choice = known[p];
            if (choice == null) {
                choice = market.parts().get(p).findCheapest(weights, budget);
            }
            if (choice == null) {
                return;
            }
            undiscounted[p] = choice;
        }
        Market reachable = market.withReachableMinimums(out, forced);
        Relaxation relaxed =
                Relaxation.of(
                        reachable, out, forced, undiscounted, covers, bestCost - 1 + TINY, budget);
        if (isRuledOut(relaxed.bound())) {
            return;
        }
        int[][] filled = relaxed.quantities();
        boolean[] ordered = market.usedBy(filled);
        for (int s = 0; s < forced.length; s++) {
            ordered[s] |= forced[s];
        }
        if (Padding.pad(market, filled, ordered)) {
            offer(filled);
        }
        open.add(new Node(out, forced, undiscounted, relaxed, relaxed.bound(), LEAST_ROOM));
    }

    private void visit(Node node) {
        int supplier = findUndecided(node.relaxed().quantities(), node.forced());
        if (supplier < 0) {
            supplier = solve(node);
        }
        if (supplier >= 0) {
            branch(supplier, node);
        }
    }

    private boolean isRuledOut(double bound) {
        return bound > bestCost - 1 + TINY;
    }

    /** Of the orders below their minimum that are not decided on, the one that lacks most. */
    private int findUndecided(int[][] quantities, boolean[] forced) {
        long[] values = market.valuesOf(quantities);
        boolean[] used = market.usedBy(quantities);
        int found = -1;
        long most = 0;
        for (int s = 0; s < values.length; s++) {
            long lacking = market.minimums()[s] - values[s];
            if (!forced[s] && used[s] && lacking > most) {
                most = lacking;
                found = s;
            }
        }
        return found;
    }

    /**
     * Solves with the decisions made so far, more thoroughly each time that the node comes up.
     *
     * @return a supplier whose order then lacks something; below 0 when there is none
     */
    private int solve(Node node) {
        Market reachable = market.withReachableMinimums(node.out(), node.forced());
        Relaxation guide = node.relaxed().guiding(node.undiscounted());
        boolean hasPlateau = guide != node.relaxed();
        if (hasPlateau && node.bound() == node.relaxed().bound()) {
            trade(reachable, node, guide.quantities(), node.bound());
            if (isRuledOut(node.bound())) {
                return -1;
            }
        }
        double limit = Math.min(bestCost - 1, node.bound() + node.room());
        Ways ways = new Ways(reachable, node.relaxed(), guide, node.forced(), limit, budget);
        Outcome outcome = WaySearch.search(reachable, node.forced(), ways, limit, bestCost, budget);
        if (outcome.quantities() != null) {
            int lacking = findUndecided(outcome.quantities(), node.forced());
            if (lacking >= 0) {
                return lacking;
            }
            offer(outcome.quantities());
        }
        double whole = limit < bestCost - 1 ? limit : bestCost;
        double floor = Math.max(node.bound(), Math.min(outcome.floor(), whole));
        if (hasPlateau && outcome.start() != null) {
            trade(reachable, node, outcome.start(), floor);
        }
        if (isRuledOut(floor)) {
            return -1;
        }
        if (outcome.isStuck()) {
            unproven = Math.min(unproven, floor);
        } else {
            open.add(node.triedUpTo(floor));
        }
        return -1;
    }

    /** Where many choices cost the same, one that can be filled up exactly may be near. */
    private void trade(Market reachable, Node node, int[][] start, double floor) {
        int[][] traded = Trading.trade(reachable, node.forced(), start, floor, bestCost, budget);
        if (traded != null) {
            offer(traded);
        }
    }

    private void offer(int[][] quantities) {
        long cost = Market.sum(market.valuesOf(quantities));
        if (cost < bestCost) {
            bestCost = cost;
            best = quantities;
        }
    }

    private void branch(int supplier, Node node) {
        boolean[] without = node.out().clone();
        without[supplier] = true;
        @Nullable Choice[] kept = node.undiscounted().clone();
        for (int p = 0; p < kept.length; p++) {
            if (market.parts().get(p).uses(supplier, node.undiscounted()[p].quantities())) {
                kept[p] = null;
            }
        }
        List<long[]> covers = node.relaxed().covers();
        add(kept, without, node.forced(), covers.stream().filter(of -> of[supplier] == 0).toList());
        boolean[] with = node.forced().clone();
        with[supplier] = true;
        add(node.undiscounted(), node.out(), with, covers);
    }
}
