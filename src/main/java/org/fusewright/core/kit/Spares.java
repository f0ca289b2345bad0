package org.fusewright.core.kit;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.job.ResolvedJob;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Spare fuses for the road: for each rating in the blocks so many mini fuses, even where breakers
 * sit (common practice, no published source), and of each main fuse as many. Where no mini fuse has
 * the breaker's rating, the next lower one stands in: never a higher one.
 */
final class Spares {

    /** So many spare fuses, and the places where one can stand in. */
    record Spare(Device device, int quantity, List<String> standsInAt) {}

    private Spares() {}

    static List<Spare> of(List<KitBlock> blocks, List<KitFeed> feeds, ResolvedJob job) {
        int each = job.job().choices().spareFusesPerRating();
        if (each == 0) {
            return List.of();
        }
        List<Device> fuses = job.stock().listBlockDevices(DeviceKind.FUSE);
        SortedMap<PartNumber, List<String>> places = new TreeMap<>();
        for (KitBlock block : blocks) {
            for (KitBlock.Seat seat : block.seats()) {
                if (seat.part() instanceof Device device) {
                    standIn(device, fuses)
                            .ifPresent(fuse -> note(places, fuse, PartsList.place(block, seat)));
                }
            }
        }
        for (KitFeed feed : feeds) {
            feed.sized()
                    .mainDevice()
                    .ifPresent(main -> note(places, main, PartsList.placeOf(feed)));
        }
        List<Spare> spares = new ArrayList<>();
        places.forEach(
                (number, at) ->
                        spares.add(
                                new Spare(
                                        (Device) job.stock().catalog().getPart(number), each, at)));
        return spares;
    }

    private static void note(SortedMap<PartNumber, List<String>> places, Device fuse, String at) {
        places.computeIfAbsent(fuse.number(), number -> new ArrayList<>()).add(at);
    }

    private static Optional<Device> standIn(Device device, List<Device> fuses) {
        @Nullable Device largest = null;
        for (Device fuse : fuses) {
            if (fuse.ratingA() <= device.ratingA()) {
                largest = fuse;
            }
        }
        return Optional.ofNullable(largest);
    }
}
