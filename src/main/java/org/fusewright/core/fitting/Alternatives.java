package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Other good arrangements of a task than the cheapest. All of them keep every rule; those that are
 * measured against the cheapest have no more blocks than it has.
 */
public final class Alternatives {

    /** Steps for each location and search: several of them make one answer. */
    private static final long STEPS = 60_000;

    /** Finer than any block's current is told. */
    private static final double COOLER_BY_A = 0.05;

    /**
     * An arrangement that is best in something.
     *
     * @param task all arrangements of which are as good in it, when they have no more blocks; its
     *     forms may have lower limits than those of the arrangement
     */
    public record Alternative(Arrangement arrangement, FittingTask task, int mostBlocks) {

        private static Alternative of(Arrangement arrangement, FittingTask task) {
            return new Alternative(arrangement, task, arrangement.blocks().size());
        }
    }

    private final FittingTask task;
    private final Arrangement cheapest;

    public Alternatives(FittingTask task, Arrangement cheapest) {
        this.task = task;
        this.cheapest = cheapest;
    }

    /** The fewest blocks, and among these the cheapest. */
    public Alternative fewestBlocks() {
        return Alternative.of(fewest(task), task);
    }

    private static Arrangement fewest(FittingTask task) {
        return Fitter.fit(task, Aim.FEWEST_BLOCKS, STEPS);
    }

    /** Most free positions in as many blocks as the cheapest has. */
    public Alternative mostSpare() {
        int low = free(cheapest, task);
        int most = task.forms().stream().mapToInt(BlockForm::positions).max().orElse(0);
        int width = 0;
        for (PlacedBlock block : cheapest.blocks()) {
            width += block.form().positions();
        }
        int high =
                Math.min(
                        low + most * cheapest.blocks().size() - width,
                        FittingTask.MOST_PLACES - task.items().size());
        Alternative best = Alternative.of(cheapest, task.withSparePositions(low));
        while (low < high) {
            int middle = (low + high + 1) / 2;
            FittingTask roomierTask = task.withSparePositions(middle);
            Arrangement roomier = fewest(roomierTask);
            if (roomier.blocks().size() <= cheapest.blocks().size()) {
                best = Alternative.of(roomier, roomierTask);
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return best;
    }

    /** Least current for each position of the busiest block, in as many blocks as the cheapest. */
    public Alternative coolest() {
        double high = busiestA(cheapest, task);
        double low = 0;
        Alternative best = Alternative.of(cheapest, limited(high));
        while (high - low > COOLER_BY_A) {
            double middle = (low + high) / 2;
            FittingTask coolerTask = limited(middle);
            Arrangement cooler = fewest(coolerTask);
            boolean does =
                    cooler.unplaced().size() == cheapest.unplaced().size()
                            && cooler.released().size() == cheapest.released().size()
                            && cooler.blocks().size() <= cheapest.blocks().size();
            if (does) {
                Arrangement whole = withFormsOf(task, cooler);
                best = Alternative.of(whole, coolerTask);
                high = Math.min(middle, busiestA(whole, task));
            } else {
                low = middle;
            }
        }
        return best;
    }

    private FittingTask limited(double positionA) {
        return task.withForms(
                form ->
                        form.withLimits(
                                form.clearanceMm(),
                                Math.min(form.maxTotalA(), positionA * form.positions()),
                                form.maxPositionA()));
    }

    /** The arrangement with a task's own forms instead of those with a lower limit. */
    public static Arrangement withFormsOf(FittingTask task, Arrangement limited) {
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

    /** For each block, the cheapest with blocks of its name only, where these hold all items. */
    public List<Alternative> ofOneBlockType() {
        Map<String, List<BlockForm>> byBlock = new LinkedHashMap<>();
        for (BlockForm form : task.forms()) {
            byBlock.computeIfAbsent(form.block(), b -> new ArrayList<>()).add(form);
        }
        List<Alternative> all = new ArrayList<>();
        for (List<BlockForm> forms : byBlock.values()) {
            FittingTask ofOne = task.withForms(forms);
            Arrangement one = Fitter.fit(ofOne, Aim.LEAST_COST, STEPS);
            if (one.unplaced().size() == cheapest.unplaced().size()
                    && one.released().size() == cheapest.released().size()) {
                all.add(new Alternative(one, ofOne, KnownDiscounts.ANY_NUMBER));
            }
        }
        return all;
    }

    /** What the blocks cost by the prices of their forms. */
    public static long byPieceMicros(Arrangement arrangement, FittingTask task) {
        Map<String, Integer> widths = new LinkedHashMap<>();
        task.items().forEach(item -> widths.put(item.id(), item.width().positions()));
        long micros = 0;
        for (PlacedBlock block : arrangement.blocks()) {
            int empty = block.form().positions();
            for (PlacedItem item : block.items()) {
                empty -= widths.get(item.item());
            }
            micros += block.form().costMicros() + empty * block.form().emptyPositionMicros();
        }
        return micros;
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
