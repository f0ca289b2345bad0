package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** What no change of a task may do to its cost, at sizes that no enumeration reaches. */
class MonotoneTest {

    private static final int TASKS = 600;

    private static FittingTask task(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return RandomTasks.task(random, 1 + random.nextInt(24), random.nextInt(4));
    }

    private static Arrangement proven(FittingTask task) {
        Arrangement arrangement = Fitter.fit(task);
        Rules.assertKept(task, arrangement);
        assertThat(arrangement.optimal()).as(Drawing.text(task)).isTrue();
        return arrangement;
    }

    private static FittingTask withoutLastItem(FittingTask task) {
        List<FittingItem> fewer = task.items().subList(0, task.items().size() - 1);
        return new FittingTask(fewer, task.forms(), task.sparePositions());
    }

    @Test
    void asksNoLessForOneMoreItemWhenPlugsAreFree() {
        for (long seed = 0; seed < TASKS; seed++) {
            FittingTask plugged = task(seed);
            FittingTask task =
                    new FittingTask(
                            plugged.items(),
                            plugged.forms().stream()
                                    .map(f -> withPrices(f, f.costMicros(), 0))
                                    .toList(),
                            plugged.sparePositions());
            assertThat(proven(task).costMicros())
                    .as(Drawing.text(task))
                    .isGreaterThanOrEqualTo(proven(withoutLastItem(task)).costMicros());
        }
    }

    /** An item in a position that would be empty does save the plugs: no more than that. */
    @Test
    void savesNoMoreThanItsPlugsByOneMoreItem() {
        int saving = 0;
        for (long seed = 0; seed < TASKS; seed++) {
            FittingTask task = task(seed);
            FittingItem last = task.items().getLast();
            Arrangement arrangement = proven(task);
            long plugs =
                    arrangement.blocks().stream()
                            .filter(
                                    b ->
                                            b.items().stream()
                                                    .anyMatch(i -> i.item().equals(last.id())))
                            .mapToLong(b -> b.form().emptyPositionMicros())
                            .sum();
            long saved = proven(withoutLastItem(task)).costMicros() - arrangement.costMicros();
            assertThat(saved)
                    .as(Drawing.text(task))
                    .isLessThanOrEqualTo(plugs * last.width().positions());
            saving += saved > 0 ? 1 : 0;
        }
        assertThat(saving).as("tasks in which one more item does save plugs").isPositive();
    }

    @Test
    void asksNoMoreWhenAFormGetsCheaper() {
        for (long seed = 0; seed < TASKS; seed++) {
            FittingTask task = task(seed);
            List<BlockForm> forms = new ArrayList<>(task.forms());
            BlockForm form = forms.get((int) (seed % forms.size()));
            forms.set(
                    (int) (seed % forms.size()),
                    withPrices(form, form.costMicros() * 7 / 8, form.emptyPositionMicros() / 2));
            FittingTask cheaper = new FittingTask(task.items(), forms, task.sparePositions());
            assertThat(proven(cheaper).costMicros())
                    .as(Drawing.text(task))
                    .isLessThanOrEqualTo(proven(task).costMicros());
        }
    }

    @Test
    void asksNoLessForOneMoreSparePosition() {
        for (long seed = 0; seed < TASKS; seed++) {
            FittingTask task = task(seed);
            FittingTask roomier =
                    new FittingTask(task.items(), task.forms(), task.sparePositions() + 1);
            assertThat(proven(roomier).costMicros())
                    .as(Drawing.text(task))
                    .isGreaterThanOrEqualTo(proven(task).costMicros());
        }
    }

    @Test
    void asksNoMoreWhenThereIsOneMoreForm() {
        for (long seed = 0; seed < TASKS; seed++) {
            FittingTask more = task(seed);
            if (more.forms().size() == 1) {
                continue;
            }
            FittingTask task =
                    new FittingTask(
                            more.items(),
                            more.forms().subList(0, more.forms().size() - 1),
                            more.sparePositions());
            if (proven(task).unplaced().equals(proven(more).unplaced())) {
                assertThat(proven(more).costMicros())
                        .as(Drawing.text(more))
                        .isLessThanOrEqualTo(proven(task).costMicros());
            }
        }
    }

    private static BlockForm withPrices(BlockForm form, long costMicros, long emptyPositionMicros) {
        return new BlockForm(
                form.block(),
                form.cap(),
                form.positions(),
                form.relayPairStarts(),
                form.clearanceMm(),
                form.maxTotalA(),
                form.maxPositionA(),
                costMicros,
                emptyPositionMicros);
    }
}
