package org.fusewright.benchmarks;

import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Width;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Tasks to time: devices with a relay for every fourth, every third device a breaker that needs the
 * tall cap, three-, four- and eight-position blocks with either cap.
 */
final class FittingTasks {

    private FittingTasks() {}

    /**
     * @param tight whether the blocks carry hardly more than their items ask for; otherwise they
     *     carry what the sample catalog's do
     */
    static FittingTask draw(int count, int locations, boolean tight) {
        SplittableRandom random = new SplittableRandom(count);
        List<FittingItem> items = new ArrayList<>();
        while (items.size() < count) {
            String id = "c" + items.size();
            String location = "place " + items.size() % locations;
            double currentA = (5 + random.nextInt(95)) / 10.0;
            double heightMm = random.nextInt(3) == 0 ? 21 : 10;
            items.add(item(id, Width.POSITION, heightMm, currentA, location, Optional.empty()));
            if (random.nextInt(4) == 0 && items.size() < count) {
                String relay = id + "r";
                items.add(item(relay, Width.RELAY_PAIR, 21, currentA, location, Optional.of(id)));
            }
        }
        List<BlockForm> forms = new ArrayList<>();
        for (boolean tall : new boolean[] {false, true}) {
            forms.add(form(3, tall, tight ? 13.2 : 60, tall ? 15_400_000 : 14_600_000));
            forms.add(form(4, tall, tight ? 17.6 : 80, tall ? 17_600_000 : 16_800_000));
            forms.add(form(8, tall, tight ? 35.2 : 120, tall ? 24_150_000 : 23_350_000));
        }
        return new FittingTask(items, forms, 0);
    }

    private static FittingItem item(
            String id,
            Width width,
            double heightMm,
            double currentA,
            String location,
            Optional<String> besides) {
        return new FittingItem(id, width, heightMm, currentA, location, besides, Optional.empty());
    }

    private static BlockForm form(int positions, boolean tall, double limitA, long costMicros) {
        List<Integer> pairs =
                switch (positions) {
                    case 4 -> List.of(1, 3);
                    case 8 -> List.of(1, 3, 5, 7);
                    default -> List.of();
                };
        return new BlockForm(
                positions + "P",
                tall ? "tall" : "short",
                positions,
                pairs,
                tall ? 24 : 12,
                limitA,
                30,
                costMicros,
                160_000);
    }
}
