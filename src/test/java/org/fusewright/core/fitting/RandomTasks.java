package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;

/** Tasks with everything that can matter, from a seed. */
final class RandomTasks {

    private static final double[] CURRENTS = {0.1, 0.2, 2, 3, 5, 7.5, 10, 12.3, 15, 20, 30};
    private static final double[] HEIGHTS = {10, 10, 10, 20, 30};
    private static final String[] LOCATIONS = {"seat", "rear", "dash"};

    private RandomTasks() {}

    static FittingTask small(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int spare = random.nextInt(2) == 0 ? 0 : random.nextInt(6);
        return task(random, 1 + random.nextInt(7), spare);
    }

    static FittingTask task(SplittableRandom random, int count, int spare) {
        int locations = 1 + random.nextInt(3);
        int relaysIn10 = random.nextInt(7);
        List<FittingItem> items = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            boolean relay = random.nextInt(10) < relaysIn10;
            Optional<String> besides =
                    i > 1 && random.nextInt(2) == 0
                            ? Optional.of(items.get(random.nextInt(items.size())).id())
                            : Optional.empty();
            items.add(
                    new FittingItem(
                            (relay ? "r" : "d") + i,
                            relay ? Width.RELAY_PAIR : Width.POSITION,
                            HEIGHTS[random.nextInt(HEIGHTS.length)],
                            CURRENTS[random.nextInt(CURRENTS.length)],
                            LOCATIONS[random.nextInt(locations)],
                            besides,
                            Optional.empty()));
        }
        boolean onePlug = random.nextBoolean();
        List<BlockForm> forms = new ArrayList<>();
        int kinds = 1 + random.nextInt(5);
        for (int f = 0; f < kinds; f++) {
            forms.add(form(random, f, onePlug));
        }
        return new FittingTask(items, forms, spare);
    }

    /**
     * The task with places for some of its items, in one or two blocks a location. Fixed ones can
     * be had all together.
     */
    static FittingTask withPlaces(FittingTask task, SplittableRandom random, boolean fixed) {
        List<FittingItem> items = new ArrayList<>(task.items());
        for (int i = 0; i < items.size(); i++) {
            if (random.nextInt(3) > 0) {
                continue;
            }
            FittingItem item = items.get(i);
            BlockForm form = task.forms().get(random.nextInt(task.forms().size()));
            boolean typed = random.nextInt(3) == 0;
            boolean anywhere = random.nextInt(4) == 0;
            Place place =
                    new Place(
                            item.location() + (random.nextBoolean() ? "A" : "B"),
                            typed ? Optional.of(form.block()) : Optional.empty(),
                            anywhere
                                    ? OptionalInt.empty()
                                    : OptionalInt.of(1 + random.nextInt(form.positions())),
                            fixed);
            items.set(i, item.withPlace(Optional.of(place)));
            if (fixed && !Exhaustive.canHold(place.block(), items, task.forms())) {
                items.set(i, item);
            }
        }
        return new FittingTask(items, task.forms(), task.sparePositions());
    }

    /**
     * Devices and some relays at one location, their currents hardly ever alike, in blocks that
     * carry less than their positions could ask for.
     */
    static FittingTask crowded(long seed, int count) {
        SplittableRandom random = new SplittableRandom(seed);
        List<FittingItem> items = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            boolean relay = random.nextInt(5) == 0;
            items.add(
                    new FittingItem(
                            (relay ? "r" : "d") + i,
                            relay ? Width.RELAY_PAIR : Width.POSITION,
                            relay || random.nextInt(3) > 0 ? 10 : 30,
                            (5 + random.nextInt(145)) / 10.0,
                            "seat",
                            Optional.empty(),
                            Optional.empty()));
        }
        String plugs = random.nextBoolean() ? "+0.4" : "";
        String forms = "| 3P:21/- 3Pt=11^30:21/- 4P%s:28/- 4Pt=13%s^30:28/- 8P=23:56/-";
        return new FittingTask(
                items, Drawing.task(forms.formatted(plugs, plugs)).forms(), random.nextInt(3));
    }

    private static BlockForm form(SplittableRandom random, int index, boolean onePlug) {
        int positions = 1 + random.nextInt(8);
        List<Integer> pairs = new ArrayList<>();
        for (int p = 1; p < positions; p++) {
            if (random.nextInt(3) > 0) {
                pairs.add(p++);
            }
        }
        int[] clearances = {10, 20, 30};
        double total = random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : 15 + random.nextInt(60);
        double each = random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : 5 + random.nextInt(30);
        // Round prices make many answers equally cheap, so that the count of blocks decides.
        long step = random.nextBoolean() ? 1_000_000 : 10_000;
        long cost = (200 + random.nextInt(1_800)) * 10_000L / step * step;
        long plug = onePlug ? 120_000 : random.nextInt(40) * 10_000L * random.nextInt(10);
        return new BlockForm(
                positions + "P" + (char) ('a' + index),
                "cap",
                positions,
                pairs,
                clearances[random.nextInt(3)],
                total,
                each,
                cost,
                plug);
    }
}
