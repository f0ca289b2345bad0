package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Other good arrangements of a task than the cheapest. All of them keep every rule; those that are
 * measured against the cheapest have no more blocks than it has.
 */
public final class Alternatives {

    /** Steps for each location and search: several of them make one answer. */
    private static final long STEPS = 60_000;

    /** Finer than any block's current is told. */
    private static final double COOLER_BY_A = 0.05;

    private final FittingTask task;
    private final Arrangement cheapest;

    public Alternatives(FittingTask task, Arrangement cheapest) {
        this.task = task;
        this.cheapest = cheapest;
    }

    /** The fewest blocks, and among these the cheapest. */
    public Arrangement fewestBlocks() {
        return fewest(task);
    }

    private static Arrangement fewest(FittingTask task) {
        return Fitter.fit(task, Aim.FEWEST_BLOCKS, STEPS);
    }

    /** Most free positions in as many blocks as the cheapest has. */
    public Arrangement mostSpare() {
        int low = free(cheapest);
        int most = task.forms().stream().mapToInt(BlockForm::positions).max().orElse(0);
        int width = 0;
        for (PlacedBlock block : cheapest.blocks()) {
            width += block.form().positions();
        }
        int high =
                Math.min(
                        low + most * cheapest.blocks().size() - width,
                        FittingTask.MOST_PLACES - task.items().size());
        Arrangement best = cheapest;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            Arrangement roomier = fewest(task.withSparePositions(middle));
            if (roomier.blocks().size() <= cheapest.blocks().size()) {
                best = roomier;
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return best;
    }

    /** Least current for each position of the busiest block, in as many blocks as the cheapest. */
    public Arrangement coolest() {
        double high = busiestA(cheapest, task);
        double low = 0;
        Arrangement best = cheapest;
        while (high - low > COOLER_BY_A) {
            double middle = (low + high) / 2;
            Arrangement cooler =
                    fewest(
                            task.withForms(
                                    form ->
                                            form.withLimits(
                                                    form.clearanceMm(),
                                                    Math.min(
                                                            form.maxTotalA(),
                                                            middle * form.positions()),
                                                    form.maxPositionA())));
            boolean does =
                    cooler.unplaced().size() == cheapest.unplaced().size()
                            && cooler.released().size() == cheapest.released().size()
                            && cooler.blocks().size() <= cheapest.blocks().size();
            if (does) {
                best = withWholeForms(cooler);
                high = Math.min(middle, busiestA(best, task));
            } else {
                low = middle;
            }
        }
        return best;
    }

    /** The task's own forms instead of those with a lower limit. */
    private Arrangement withWholeForms(Arrangement limited) {
        List<PlacedBlock> blocks = new ArrayList<>();
        for (PlacedBlock block : limited.blocks()) {
            BlockForm form =
                    task.forms().stream()
                            .filter(whole -> whole.block().equals(block.form().block()))
                            .filter(whole -> whole.cap().equals(block.form().cap()))
                            .findFirst()
                            .orElseThrow();
            blocks.add(new PlacedBlock(block.name(), form, block.location(), block.items()));
        }
        return limited.withBlocks(blocks);
    }

    /** The cheapest with blocks of one name only; empty when no one name holds all items. */
    public Optional<Arrangement> oneBlockType() {
        Map<String, List<BlockForm>> byBlock = new LinkedHashMap<>();
        for (BlockForm form : task.forms()) {
            byBlock.computeIfAbsent(form.block(), b -> new ArrayList<>()).add(form);
        }
        Optional<Arrangement> best = Optional.empty();
        for (List<BlockForm> forms : byBlock.values()) {
            Arrangement one =
                    Fitter.fit(
                            new FittingTask(task.items(), forms, task.sparePositions()),
                            Aim.LEAST_COST,
                            STEPS);
            if (one.unplaced().size() == cheapest.unplaced().size()
                    && one.released().size() == cheapest.released().size()
                    && best.map(b -> one.costMicros() < b.costMicros()).orElse(true)) {
                best = Optional.of(one);
            }
        }
        return best;
    }

    /** Positions that stay free. */
    public static int free(Arrangement arrangement, FittingTask task) {
        int free = 0;
        for (PlacedBlock block : arrangement.blocks()) {
            free += block.form().positions();
        }
        for (FittingItem item : task.items()) {
            free -= arrangement.unplaced().contains(item.id()) ? 0 : item.width().positions();
        }
        return free;
    }

    private int free(Arrangement arrangement) {
        return free(arrangement, task);
    }

    /** Current for each position of the block that has the most. */
    public static double busiestA(Arrangement arrangement, FittingTask task) {
        Map<String, Double> currents = new LinkedHashMap<>();
        task.items().forEach(item -> currents.put(item.id(), item.currentA()));
        double busiest = 0;
        for (PlacedBlock block : arrangement.blocks()) {
            double sum = 0;
            for (PlacedItem item : block.items()) {
                sum += currents.getOrDefault(item.item(), 0.0);
            }
            busiest = Math.max(busiest, sum / block.form().positions());
        }
        return busiest;
    }
}
