package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The seats within a block against looking at all ways to seat its items. */
class SeatingTest {

    /** What counts, first to last; less is better. */
    private static final Comparator<int[]> BETTER = Arrays::compare;

    @Test
    void findsTheBestOfAllSeats() {
        int blocks = 0;
        for (long seed = 0; seed < 400; seed++) {
            FittingTask task = RandomTasks.task(new SplittableRandom(seed), 12, 2);
            for (PlacedBlock block : Fitter.fit(task).blocks()) {
                if (block.items().size() < 6) {
                    blocks++;
                    assertThat(merit(task, block))
                            .as("seed " + seed + ": " + Drawing.text(task) + " " + block)
                            .isEqualTo(bestMerit(task, block));
                }
            }
        }
        assertThat(blocks).isGreaterThan(500);
    }

    private static int[] bestMerit(FittingTask task, PlacedBlock block) {
        List<int[]> merits = new ArrayList<>();
        List<String> ids = block.items().stream().map(PlacedItem::item).toList();
        seat(task, block, ids, new ArrayList<>(), merits);
        return merits.stream().min(BETTER).orElseThrow();
    }

    private static void seat(
            FittingTask task,
            PlacedBlock block,
            List<String> ids,
            List<PlacedItem> seated,
            List<int[]> merits) {
        if (seated.size() == ids.size()) {
            List<PlacedItem> items =
                    seated.stream()
                            .sorted(Comparator.comparingInt(PlacedItem::firstPosition))
                            .toList();
            merits.add(
                    merit(
                            task,
                            new PlacedBlock(block.name(), block.form(), block.location(), items)));
            return;
        }
        String id = ids.get(seated.size());
        for (int p = 1; p <= block.form().positions(); p++) {
            PlacedItem next = new PlacedItem(id, p);
            boolean allowed = width(id) == 1 || block.form().relayPairStarts().contains(p);
            if (allowed && seated.stream().noneMatch(other -> overlap(other, next))) {
                seated.add(next);
                seat(task, block, ids, seated, merits);
                seated.removeLast();
            }
        }
    }

    private static int width(String id) {
        return id.startsWith("r") ? 2 : 1;
    }

    private static boolean overlap(PlacedItem a, PlacedItem b) {
        return a.firstPosition() < b.firstPosition() + width(b.item())
                && b.firstPosition() < a.firstPosition() + width(a.item());
    }

    /** Wishes met (negative), neighbours both above half a position's limit, seats in job order. */
    private static int[] merit(FittingTask task, PlacedBlock block) {
        Map<String, FittingItem> items =
                task.items().stream()
                        .collect(Collectors.toMap(FittingItem::id, Function.identity()));
        int wishes = 0;
        int hot = 0;
        for (int n = 1; n < block.items().size(); n++) {
            PlacedItem left = block.items().get(n - 1);
            PlacedItem right = block.items().get(n);
            if (left.firstPosition() + width(left.item()) == right.firstPosition()) {
                FittingItem a = items.get(left.item());
                FittingItem b = items.get(right.item());
                wishes += a.besides().filter(b.id()::equals).isPresent() ? 1 : 0;
                wishes += b.besides().filter(a.id()::equals).isPresent() ? 1 : 0;
                double half = block.form().maxPositionA() / 2;
                hot += a.currentA() > half && b.currentA() > half ? 1 : 0;
            }
        }
        int[] merit = new int[2 + block.items().size()];
        merit[0] = -wishes;
        merit[1] = hot;
        int[] seats =
                block.items().stream()
                        .sorted(
                                Comparator.comparing(
                                        i -> task.items().indexOf(items.get(i.item()))))
                        .mapToInt(PlacedItem::firstPosition)
                        .toArray();
        System.arraycopy(seats, 0, merit, 2, seats.length);
        return merit;
    }
}
