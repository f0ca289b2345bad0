package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * The same least cost and the same fewest blocks as an independent solver, OR-Tools CP-SAT, over
 * everything that a task can ask for: positions, relay pairs, cap clearance, limits of a block and
 * of a position, locations, fixed places, spare positions, and plugs at one price or several. The
 * search proves every task, those too that the solver does not.
 */
class JudgeTest {

    private static final int TASKS = 500;
    private static final double EFFORT = 2;

    @Test
    void findsWhatAnIndependentSolverFinds() {
        int proven = 0;
        int withPlaces = 0;
        int seed = 0;
        Set<Integer> sizes = new HashSet<>();
        while (proven < TASKS) {
            FittingTask task = task(seed);
            String as = "seed " + seed + ": " + Drawing.text(task);
            Arrangement arrangement = Fitter.fit(task);
            Rules.assertKept(task, arrangement);
            assertThat(arrangement.released()).as(as).isEmpty();
            Judge.Verdict verdict = Judge.judge(task, arrangement, EFFORT);
            if (verdict.proven()) {
                proven++;
                sizes.add(task.items().size());
                withPlaces += task.items().stream().anyMatch(i -> i.place().isPresent()) ? 1 : 0;
            }
            assertThat(arrangement.optimal()).as(as).isTrue();
            if (verdict.proven()) {
                assertThat(arrangement.costMicros()).as(as).isEqualTo(verdict.costMicros());
                assertThat(arrangement.blocks()).as(as).hasSize(verdict.blocks());
            }
            seed++;
        }
        assertThat(seed).as("tasks that the solver was asked").isLessThan(TASKS + TASKS / 20);
        assertThat(sizes).contains(1, 2, 3, 10, 30, 60);
        assertThat(withPlaces).isGreaterThan(TASKS / 10);
    }

    /** As few items leave their place as when every choice of those that stay is judged. */
    @Test
    void movesNoMoreThanItMust() {
        int moving = 0;
        for (int seed = 0; seed < 120; seed++) {
            FittingTask task = wished(seed);
            String as = "seed " + seed + ": " + Drawing.text(task);
            Arrangement arrangement = Fitter.fit(task);
            Rules.assertKept(task, arrangement);
            assertThat(arrangement.moved()).as(as).hasSize(fewestMoves(task, arrangement));
            moving += arrangement.moved().isEmpty() ? 0 : 1;
        }
        assertThat(moving).as("tasks in which something must move").isGreaterThan(20);
    }

    private static int fewestMoves(FittingTask task, Arrangement best) {
        List<FittingItem> items = task.items();
        int all = 1 << items.size();
        int fewest = items.size();
        for (int kept = 0; kept < all; kept++) {
            List<FittingItem> held = new ArrayList<>();
            int moves = 0;
            boolean sensible = true;
            for (int i = 0; i < items.size(); i++) {
                Optional<Place> place = items.get(i).place();
                boolean keeps = (kept >> i & 1) == 1;
                sensible &= !keeps || place.isPresent();
                moves += place.isPresent() && !keeps ? 1 : 0;
                held.add(
                        items.get(i)
                                .withPlace(keeps ? place.map(JudgeTest::fixed) : Optional.empty()));
            }
            if (sensible && moves < fewest) {
                FittingTask fixed = new FittingTask(held, task.forms(), task.sparePositions());
                if (new Exhaustive.Answer(best.costMicros(), best.blocks().size())
                        .equals(Exhaustive.solve(fixed))) {
                    fewest = moves;
                }
            }
        }
        return fewest;
    }

    private static Place fixed(Place place) {
        return new Place(place.block(), place.type(), place.firstPosition(), true);
    }

    /** Mostly small, as kits are, and every size up to 60. */
    private static FittingTask task(int seed) {
        SplittableRandom random = new SplittableRandom(70_000 + seed);
        int size = seed % 8 == 7 ? 1 + seed / 8 % 60 : 1 + seed % 14;
        int spare = random.nextInt(2) == 0 ? 0 : random.nextInt(6);
        FittingTask task = RandomTasks.task(random, size, spare);
        return seed % 3 == 0 ? RandomTasks.withPlaces(task, random, true) : task;
    }

    private static FittingTask wished(int seed) {
        SplittableRandom random = new SplittableRandom(90_000 + seed);
        return RandomTasks.withPlaces(
                RandomTasks.task(random, 2 + random.nextInt(4), 0), random, false);
    }
}
