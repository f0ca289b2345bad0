package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Why an arrangement is not a cheaper one. Each rule is lifted alone and the task solved anew: what
 * then costs less is rejected by that rule and nothing else. Besides, the smallest number of blocks
 * of each form alone that has enough positions.
 */
public final class Reasons {

    /** Enough for every kit of a usual size; what is found in less is true all the same. */
    private static final long STEPS = 20_000;

    private static final double NO_LIMIT = Double.POSITIVE_INFINITY;

    /** Taller than any item. */
    private static final double ANY_HEIGHT_MM = 1_000;

    private static final Comparator<Map.Entry<BlockForm, Integer>> LARGEST_FIRST =
            Comparator.comparingInt(form -> -form.getKey().positions());

    private final FittingTask task;
    private final long costMicros;
    private final List<Rejected> rejected = new ArrayList<>();
    private final Set<Map<BlockForm, Integer>> seen = new HashSet<>();

    private Reasons(FittingTask task, long costMicros) {
        this.task = task;
        this.costMicros = costMicros;
    }

    private static FittingItem withoutWish(FittingItem item) {
        return item.place().isEmpty() || item.place().get().fixed() ? item : unplaced(item);
    }

    private static FittingItem unplaced(FittingItem item) {
        return item.withPlace(Optional.empty());
    }

    /** What looks cheaper than a task's arrangement of least cost, the cheapest first. */
    public static List<Rejected> list(FittingTask task, Arrangement arrangement) {
        return arrangement.blocks().isEmpty()
                ? List.of()
                : list(withoutUnplaced(task, arrangement), arrangement.costMicros());
    }

    /**
     * @param task whose items can all be placed, without wishes
     * @param costMicros the least that it costs
     */
    static List<Rejected> list(FittingTask task, long costMicros) {
        Reasons reasons = new Reasons(task, costMicros);
        if (reasons.positionsAlone() < costMicros) {
            reasons.liftRules();
            reasons.lookAtSingleForms();
        }
        reasons.rejected.sort(Comparator.comparingLong(Rejected::costMicros));
        return List.copyOf(reasons.rejected);
    }

    static FittingTask withoutUnplaced(FittingTask task, Arrangement arrangement) {
        List<FittingItem> placed = new ArrayList<>(task.items().size());
        boolean same = true;
        for (FittingItem item : task.items()) {
            if (arrangement.unplaced().isEmpty() || !arrangement.unplaced().contains(item.id())) {
                FittingItem without = withoutWish(item);
                placed.add(without);
                same &= without == item;
            } else {
                same = false;
            }
        }
        return same ? task : new FittingTask(placed, task.forms(), task.sparePositions());
    }

    /** The least that blocks with enough positions cost, when nothing else counts. */
    private long positionsAlone() {
        int width = 0;
        for (FittingItem item : task.items()) {
            width += item.width().positions();
        }
        long[] least = new long[width + 1];
        for (int w = 1; w <= width; w++) {
            least[w] = Long.MAX_VALUE;
            for (BlockForm form : task.forms()) {
                int taken = Math.min(w, form.positions());
                long here =
                        form.costMicros() + (form.positions() - taken) * form.emptyPositionMicros();
                least[w] = Math.min(least[w], least[w - taken] + here);
            }
        }
        return least[width];
    }

    private void liftRules() {
        boolean relays = task.items().stream().anyMatch(i -> i.width() == Width.RELAY_PAIR);
        lift(Rule.RELAY_PAIR, relays, task.withForms(Reasons::pairedThroughout));
        lift(Rule.CAP_CLEARANCE, task.withForms(Reasons::withAnyHeight));
        lift(Rule.POSITION_CURRENT, task.withForms(Reasons::withAnyPositionCurrent));
        lift(Rule.BLOCK_CURRENT, task.withForms(Reasons::withAnyTotalCurrent));
        boolean places = task.hasPlaces();
        lift(Rule.FIXED_PLACES, places, task.withItems(Reasons::unplaced));
        lift(Rule.SPARE_POSITIONS, task.sparePositions() > 0, task.withSparePositions(0));
        long locations = task.items().stream().map(FittingItem::location).distinct().count();
        lift(Rule.LOCATIONS, locations > 1, task.withItems(i -> i.withLocation("one")));
    }

    private void lift(Rule rule, FittingTask lifted) {
        lift(rule, !isOutOfReach(lifted), lifted);
    }

    /** Whether the lifted limits are out of reach anyway: then nothing can come of lifting them. */
    private boolean isOutOfReach(FittingTask lifted) {
        for (int f = 0; f < task.forms().size(); f++) {
            BlockForm before = task.forms().get(f);
            BlockForm after = lifted.forms().get(f);
            for (FittingItem item : task.items()) {
                if (before.takes(item) != after.takes(item)) {
                    return false;
                }
            }
            if (before.maxTotalA() != after.maxTotalA() && isInReach(before, task.items())) {
                return false;
            }
        }
        return true;
    }

    /** Whether as many items as a block has positions can bring more than it carries. */
    static boolean isInReach(BlockForm form, List<FittingItem> items) {
        double[] currents = new double[items.size()];
        for (int i = 0; i < currents.length; i++) {
            currents[i] = items.get(i).currentA();
        }
        Arrays.sort(currents);
        double most = 0;
        for (int i = Math.max(0, currents.length - form.positions()); i < currents.length; i++) {
            most += currents[i];
        }
        return most > form.maxTotalA();
    }

    private void lift(Rule rule, boolean relevant, FittingTask lifted) {
        if (relevant) {
            Fitter.Blocks other = Fitter.findBlocks(lifted, STEPS);
            if (other.costMicros() < costMicros) {
                Map<BlockForm, Integer> blocks = new LinkedHashMap<>();
                other.counts().entrySet().stream()
                        .sorted(LARGEST_FIRST)
                        .forEach(
                                form -> {
                                    int at = lifted.forms().indexOf(form.getKey());
                                    blocks.merge(
                                            task.forms().get(at), form.getValue(), Integer::sum);
                                });
                add(blocks, other.costMicros(), rule);
            }
        }
    }

    private void add(Map<BlockForm, Integer> blocks, long costMicros, Rule rule) {
        if (seen.add(blocks)) {
            rejected.add(new Rejected(blocks, costMicros, rule));
        }
    }

    private void lookAtSingleForms() {
        Map<String, Integer> widths = new LinkedHashMap<>();
        for (FittingItem item : task.items()) {
            widths.merge(item.location(), item.width().positions(), Integer::sum);
        }
        int width = widths.values().stream().mapToInt(Integer::intValue).sum();
        for (BlockForm form : FormTable.listWorthwhile(task.items(), task.forms())) {
            int count = 0;
            for (int here : widths.values()) {
                count += Math.ceilDiv(here, form.positions());
            }
            int spare = width + task.sparePositions();
            count = Math.max(count, Math.ceilDiv(spare, form.positions()));
            int empty = count * form.positions() - width;
            long cost = count * form.costMicros() + empty * form.emptyPositionMicros();
            if (cost < costMicros) {
                add(Map.of(form, count), cost, ruleAgainst(form, count));
            }
        }
    }

    private Rule ruleAgainst(BlockForm form, int count) {
        int relays = 0;
        double currentA = 0;
        boolean tooTall = false;
        boolean tooStrong = false;
        for (FittingItem item : task.items()) {
            relays += item.width() == Width.RELAY_PAIR ? 1 : 0;
            currentA += item.currentA();
            tooTall |= item.heightMm() > form.clearanceMm();
            tooStrong |= item.currentA() > Math.min(form.maxPositionA(), form.maxTotalA());
        }
        if (relays > count * form.relayPairStarts().size()) {
            return Rule.RELAY_PAIR;
        }
        if (tooTall) {
            return Rule.CAP_CLEARANCE;
        }
        if (tooStrong) {
            return Rule.POSITION_CURRENT;
        }
        return currentA > count * form.maxTotalA() ? Rule.BLOCK_CURRENT : Rule.ALL_AT_ONCE;
    }

    private static BlockForm pairedThroughout(BlockForm form) {
        return form.withRelayPairs(
                IntStream.range(1, form.positions()).filter(p -> p % 2 == 1).boxed().toList());
    }

    private static BlockForm withAnyHeight(BlockForm form) {
        return form.withLimits(ANY_HEIGHT_MM, form.maxTotalA(), form.maxPositionA());
    }

    private static BlockForm withAnyPositionCurrent(BlockForm form) {
        return form.withLimits(form.clearanceMm(), form.maxTotalA(), NO_LIMIT);
    }

    private static BlockForm withAnyTotalCurrent(BlockForm form) {
        return form.withLimits(form.clearanceMm(), NO_LIMIT, form.maxPositionA());
    }
}
