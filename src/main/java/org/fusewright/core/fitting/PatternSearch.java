package org.fusewright.core.fitting;

import org.fusewright.core.fitting.Rest.Limit;
import org.jspecify.annotations.Nullable;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;

/**
 * The cheapest blocks for one location, from the bound of {@link PatternRelaxation}: branch and
 * price, best bound first. It branches over the number of blocks of each form; where these are
 * whole, over how many items of a kind are in blocks of a form; where these are whole too, {@link
 * Packing} decides form by form. Slower than listing sets of blocks where that settles it at once,
 * and much stronger where currents decide.
 */
final class PatternSearch {

    /**
     * @param effort steps to fill the blocks of a form
     */
    private record Node(List<Limit> limits, long bound, long effort, long order) {}

    /** The deeper one of two first: it is nearer to a filling. */
    private static final Comparator<Node> BEST_FIRST =
            Comparator.comparingLong(Node::bound).thenComparingLong(node -> -node.order);

    private static final double TINY = 1e-6;
    private static final int MOST_IDLE = 10;

    /** Items that are put into blocks exactly, after a sequence of blocks filled one by one. */
    private static final int MOST_AT_END = 24;

    private static final long END_EFFORT = 4_000;
    private static final long PRICING_EFFORT = 20_000;
    private static final long FIRST_EFFORT = 2_000;
    private static final int EFFORT_GROWTH = 10;

    private final Site site;
    private final FormTable table;
    private final ItemKinds kinds;
    private final PatternPricing pricing;
    private final int positions;
    private final Budget budget;
    private final List<Pattern> pool = new ArrayList<>();
    private final PriorityQueue<Node> open = new PriorityQueue<>(BEST_FIRST);

    /** Those whose blocks resisted to be filled. */
    private final List<Node> resisting = new ArrayList<>();

    /** What items were worth in the last relaxation; null before. */
    private double @Nullable [] centre;

    private long order;
    private long price;
    private @Nullable Filling found;

    /**
     * @param filling of a price below the limit, if one was found
     * @param bound no filling has a lower price; the limit when there is none below it
     */
    record Outcome(@Nullable Filling filling, long bound) {}

    private PatternSearch(Site site, int sparePositions, Filling known, long limit, Budget budget) {
        this.site = site;
        this.budget = budget;
        table = site.table;
        kinds = new ItemKinds(site);
        pricing = new PatternPricing(table, kinds);
        positions = sparePositions > 0 ? site.totalWidth + sparePositions : 0;
        price = limit;
        addPatterns(known);
    }

    /**
     * @param known a filling to start from
     * @param limit only fillings of a lower price are wanted
     * @param bound no filling has a lower price
     */
    static Outcome find(
            Site site, int sparePositions, Filling known, long limit, long bound, Budget budget) {
        PatternSearch search = new PatternSearch(site, sparePositions, known, limit, budget);
        search.run(bound);
        return new Outcome(search.found, search.bound());
    }

    private long bound() {
        long bound = price;
        for (Node node : resisting) {
            bound = Math.min(bound, node.bound);
        }
        return open.isEmpty() ? bound : Math.min(bound, open.peek().bound);
    }

    private void run(long bound) {
        fillInSequence(bound);
        open.add(new Node(List.of(), bound, FIRST_EFFORT, order++));
        while (!open.isEmpty()) {
            while (!open.isEmpty() && open.peek().bound < price) {
                if (budget.isSpent()) {
                    return;
                }
                look(open.remove());
            }
            open.clear();
            for (Node node : resisting) {
                open.add(
                        new Node(node.limits, node.bound, node.effort * EFFORT_GROWTH, node.order));
            }
            resisting.clear();
        }
    }

    private void fillInSequence(long bound) {
        SequentialFilling sequence = new SequentialFilling(site, kinds, pricing, positions);
        int idle = 0;
        while (idle < MOST_IDLE && bound < price) {
            List<Pattern> blocks = sequence.next(budget);
            if (blocks.isEmpty()) {
                return;
            }
            pool.addAll(blocks);
            centre = sequence.values();
            long before = price;
            keep(filling(blocks));
            endAnew(blocks);
            idle = price < before ? 0 : idle + 1;
        }
    }

    /** The last blocks of a sequence have what was left over: fills them anew, exactly. */
    private void endAnew(List<Pattern> blocks) {
        Rest rest = rest(List.of());
        List<Pattern> kept = new ArrayList<>();
        for (Pattern pattern : blocks) {
            if (canEnd(rest)) {
                break;
            }
            kept.add(pattern);
            rest = rest.without(pattern, table);
        }
        if (!kept.isEmpty() && canEnd(rest)) {
            end(kept, rest);
        }
    }

    private static boolean canEnd(Rest rest) {
        int count = rest.count();
        return count > 0 && count <= MOST_AT_END && !rest.isAnyOpen();
    }

    /** The best way to hold the rest beside the blocks that are taken. */
    private void end(List<Pattern> taken, Rest rest) {
        long spent = 0;
        for (Pattern pattern : taken) {
            spent += pattern.price();
        }
        if (spent >= price) {
            return;
        }
        Filling begun = filling(taken);
        List<Integer> left = new ArrayList<>();
        int width = 0;
        for (int i = 0; i < site.size(); i++) {
            if (begun.blockOf[i] < 0) {
                left.add(i);
                width += site.width[i];
            }
        }
        Site part = site.withoutNamed(left);
        Budget steps = budget.split(END_EFFORT);
        Optional<Filling> end =
                LocationSearch.findAtMost(
                        part, Math.max(0, rest.positions() - width), price - spent - 1, steps);
        budget.giveBack(steps);
        if (end.isPresent()) {
            int first = begun.blocks();
            int[] forms = Arrays.copyOf(begun.form, first + end.get().blocks());
            for (int b = first; b < forms.length; b++) {
                forms[b] = table.firstUnnamed() + end.get().form[b - first];
            }
            Filling all = new Filling(site, forms);
            for (int i = 0; i < site.size(); i++) {
                if (begun.blockOf[i] >= 0) {
                    all.put(i, begun.blockOf[i]);
                }
            }
            for (int n = 0; n < left.size(); n++) {
                all.put(left.get(n), first + end.get().blockOf[n]);
            }
            keep(all);
        }
    }

    private void look(Node node) {
        Rest rest = rest(node.limits);
        PatternRelaxation relaxation = relax(rest);
        relaxation.solve(PRICING_EFFORT);
        centre = relaxation.values();
        long bound = Math.max(node.bound, relaxation.bound());
        if (bound >= price) {
            return;
        }
        if (!relaxation.isConverged()) {
            open.add(new Node(node.limits, bound, node.effort, node.order));
            return;
        }
        double[] amounts = relaxation.amounts();
        double[][] held = held(amounts);
        double[] blocks = held[kinds.size()];
        int broken = mostBroken(blocks);
        if (node.limits.isEmpty() || broken < 0) {
            dive(rest, relaxation);
            if (bound >= price) {
                return;
            }
        }
        if (broken >= 0) {
            branch(node, bound, broken, Limit.BLOCKS, blocks[broken]);
        } else if (!isFixed(node, blocks)) {
            fixBlocks(node, bound, whole(blocks));
        } else if (!branchOverItems(node, bound, held)) {
            fill(node, bound, held);
        }
    }

    private PatternRelaxation relax(Rest rest) {
        return new PatternRelaxation(table, kinds, pricing, rest, pool, centre, price, budget);
    }

    private Rest rest(List<Limit> limits) {
        int[] items = new int[kinds.size()];
        for (int k = 0; k < items.length; k++) {
            items[k] = kinds.count(k);
        }
        boolean[] named = new boolean[table.names.size()];
        Arrays.fill(named, true);
        return new Rest(items, named, positions, limits);
    }

    /** How many items of each kind are in blocks of each form; last, how many blocks. */
    private double[][] held(double[] amounts) {
        double[][] held = new double[kinds.size() + 1][table.size()];
        for (int p = 0; p < amounts.length; p++) {
            Pattern pattern = pool.get(p);
            for (int n = 0; n < pattern.kinds().length; n++) {
                held[pattern.kinds()[n]][pattern.form()] += amounts[p] * pattern.counts()[n];
            }
            held[kinds.size()][pattern.form()] += amounts[p];
        }
        return held;
    }

    /** The form whose number is furthest from a whole one; -1 when all are whole. */
    private static int mostBroken(double[] numbers) {
        int broken = -1;
        double most = TINY;
        for (int f = 0; f < numbers.length; f++) {
            double off = off(numbers[f]);
            if (off > most) {
                broken = f;
                most = off;
            }
        }
        return broken;
    }

    private static double off(double number) {
        return Math.abs(number - Math.rint(number));
    }

    private static int[] whole(double[] numbers) {
        int[] whole = new int[numbers.length];
        for (int f = 0; f < whole.length; f++) {
            whole[f] = (int) Math.rint(numbers[f]);
        }
        return whole;
    }

    private Limit limit(List<Limit> limits, int form, int kind) {
        for (Limit limit : limits) {
            if (limit.isOn(form, kind)) {
                return limit;
            }
        }
        boolean namedBlock = kind == Limit.BLOCKS && table.isNamed(form);
        return new Limit(form, kind, 0, namedBlock ? 1 : Limit.ANY);
    }

    private void branch(Node node, long bound, int form, int kind, double number) {
        Limit limit = limit(node.limits, form, kind);
        int below = (int) Math.floor(number);
        push(node, node.limits, bound, new Limit(form, kind, limit.least(), below));
        push(node, node.limits, bound, new Limit(form, kind, below + 1, limit.most()));
    }

    private void push(Node node, List<Limit> limits, long bound, Limit more) {
        if (more.least() <= more.most() && bound < price) {
            open.add(new Node(with(limits, more), bound, node.effort, order++));
        }
    }

    private static List<Limit> with(List<Limit> limits, Limit more) {
        List<Limit> all = new ArrayList<>(limits);
        all.removeIf(limit -> limit.isOn(more.form(), more.kind()));
        all.add(more);
        return all;
    }

    private boolean isFixed(Node node, double[] blocks) {
        for (int f = 0; f < blocks.length; f++) {
            Limit limit = limit(node.limits, f, Limit.BLOCKS);
            if (limit.least() != limit.most()) {
                return false;
            }
        }
        return true;
    }

    /** Tries to fill the blocks; then come these blocks, if undecided, and all other sets. */
    private void fixBlocks(Node node, long bound, int[] counts) {
        Packing.Outcome outcome = Packing.fill(site, counts, bound, price, FIRST_EFFORT, budget);
        if (outcome.filling() != null) {
            keep(outcome.filling());
            if (bound >= price) {
                return;
            }
        }
        List<Limit> limits = node.limits;
        for (int f = 0; f < counts.length; f++) {
            Limit limit = limit(limits, f, Limit.BLOCKS);
            int count = counts[f];
            push(node, limits, bound, new Limit(f, Limit.BLOCKS, limit.least(), count - 1));
            if (count < limit.most()) {
                push(node, limits, bound, new Limit(f, Limit.BLOCKS, count + 1, limit.most()));
            }
            limits = with(limits, new Limit(f, Limit.BLOCKS, count, count));
        }
        if (!outcome.proven()) {
            open.add(new Node(limits, bound, node.effort, order++));
        }
    }

    /** False when each form has whole numbers of each kind. */
    private boolean branchOverItems(Node node, long bound, double[][] held) {
        int kind = -1;
        int form = -1;
        double most = TINY;
        for (int k = 0; k < kinds.size(); k++) {
            int broken = mostBroken(held[k]);
            if (broken >= 0 && off(held[k][broken]) * kinds.width[k] > most) {
                kind = k;
                form = broken;
                most = off(held[k][broken]) * kinds.width[k];
            }
        }
        if (kind >= 0) {
            branch(node, bound, form, kind, held[kind][form]);
        }
        return kind >= 0;
    }

    /** Fills the blocks of each form with the items that it has. */
    private void fill(Node node, long bound, double[][] held) {
        int[] blocks = whole(held[kinds.size()]);
        int[] next = new int[kinds.size()];
        List<Integer> forms = new ArrayList<>();
        int[] blockOf = new int[site.size()];
        for (int f = 0; f < blocks.length; f++) {
            List<Integer> items = new ArrayList<>();
            int[] counts = new int[kinds.size()];
            for (int k = 0; k < counts.length; k++) {
                int end = Math.min(kinds.count(k), next[k] + (int) Math.rint(held[k][f]));
                counts[k] = end - next[k];
                items.addAll(kinds.members.get(k).subList(next[k], end));
                next[k] = end;
            }
            Site part =
                    new Site(site.location, items.stream().map(site.items::get).toList(), table);
            int[] of = new int[table.size()];
            of[f] = blocks[f];
            Packing.Outcome outcome =
                    Packing.fill(
                            part, of, Covers.IMPOSSIBLE, Covers.IMPOSSIBLE, node.effort, budget);
            Filling filling = outcome.filling();
            if (filling == null) {
                if (outcome.proven()) {
                    bar(node, bound, f, counts);
                } else {
                    resisting.add(new Node(node.limits, bound, node.effort, node.order));
                }
                return;
            }
            for (int n = 0; n < items.size(); n++) {
                blockOf[items.get(n)] = forms.size() + filling.blockOf[n];
            }
            for (int b = 0; b < blocks[f]; b++) {
                forms.add(f);
            }
        }
        Filling filling = new Filling(site, forms.stream().mapToInt(f -> f).toArray());
        for (int i = 0; i < blockOf.length; i++) {
            filling.put(i, blockOf[i]);
        }
        keep(filling);
    }

    /** These items do not go into the blocks of a form together: of some kind it has fewer. */
    private void bar(Node node, long bound, int form, int[] counts) {
        List<Limit> limits = node.limits;
        for (int k = 0; k < counts.length; k++) {
            if (counts[k] > 0) {
                Limit limit = limit(limits, form, k);
                push(node, limits, bound, new Limit(form, k, limit.least(), counts[k] - 1));
                limits = with(limits, new Limit(form, k, counts[k], limit.most()));
            }
        }
    }

    private void keep(Filling filling) {
        long here = filling.price();
        if (here < price) {
            price = here;
            found = filling;
            addPatterns(filling);
        }
    }

    /** Takes what the relaxation uses most of for good, and relaxes the rest, to the end. */
    private void dive(Rest start, PatternRelaxation relaxation) {
        List<Pattern> taken = new ArrayList<>();
        Rest rest = start;
        while (!rest.isEmpty()) {
            List<Pattern> chosen = choose(relaxation.amounts());
            if (chosen.isEmpty()) {
                return;
            }
            for (Pattern pattern : chosen) {
                rest = rest.without(pattern, table);
            }
            taken.addAll(chosen);
            if (canEnd(rest)) {
                end(taken, rest);
                return;
            }
            if (!rest.isEmpty() && !relaxation.goOnWith(rest)) {
                return;
            }
        }
        keep(filling(taken));
    }

    private List<Pattern> choose(double[] amounts) {
        List<Pattern> chosen = new ArrayList<>();
        int largest = -1;
        for (int p = 0; p < amounts.length; p++) {
            if (!(amounts[p] <= site.size())) {
                // Rounding got out of hand.
                return List.of();
            }
            for (int n = 1; n <= amounts[p] + TINY; n++) {
                chosen.add(pool.get(p));
            }
            if (amounts[p] > TINY && (largest < 0 || amounts[p] > amounts[largest] + TINY)) {
                largest = p;
            }
        }
        if (chosen.isEmpty() && largest >= 0) {
            chosen.add(pool.get(largest));
        }
        return chosen;
    }

    private Filling filling(List<Pattern> patterns) {
        List<Deque<Integer>> left = new ArrayList<>();
        for (List<Integer> members : kinds.members) {
            left.add(new ArrayDeque<>(members));
        }
        int[] forms = patterns.stream().mapToInt(Pattern::form).toArray();
        Filling filling = new Filling(site, forms);
        for (int b = 0; b < forms.length; b++) {
            Pattern pattern = patterns.get(b);
            for (int n = 0; n < pattern.kinds().length; n++) {
                Deque<Integer> members = left.get(pattern.kinds()[n]);
                for (int c = 0; c < pattern.counts()[n] && !members.isEmpty(); c++) {
                    filling.put(members.remove(), b);
                }
            }
        }
        return filling;
    }

    private void addPatterns(Filling filling) {
        int[][] held = new int[filling.blocks()][kinds.size()];
        for (int k = 0; k < kinds.size(); k++) {
            for (int i : kinds.members.get(k)) {
                held[filling.blockOf[i]][k]++;
            }
        }
        for (int b = 0; b < held.length; b++) {
            pool.add(Pattern.of(filling.form[b], held[b], kinds, table));
        }
    }
}
