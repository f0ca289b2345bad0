package org.fusewright.core.job;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.quantity.Millimetres;

import java.util.List;
import java.util.Optional;

/**
 * What the shop decides for the whole job.
 *
 * @param wireFamily empty: the catalog's first family
 * @param sparePositions positions to keep free over all blocks
 * @param slackPercent added to every route before cutting
 * @param endAllowance added for each end of a lead
 * @param cutStep cut lengths are whole multiples of it, rounded up
 * @param pigtail from a splice to a cavity or to the next splice; 310 mm keeps splices 12 in from a
 *     termination (AC 43.13-1B chapter 11)
 * @param jumper from a device straight to its relay
 * @param arrangement which arrangement of blocks to build
 */
public record Choices(
        List<DeviceKind> devices,
        Optional<String> wireFamily,
        boolean lockingWedge,
        boolean plugEmptyCavities,
        int sparePositions,
        int spareFusesPerRating,
        double slackPercent,
        Millimetres endAllowance,
        Millimetres cutStep,
        Millimetres pigtail,
        Millimetres jumper,
        ArrangementKind arrangement) {

    public Choices withArrangement(ArrangementKind kind) {
        return new Choices(
                devices,
                wireFamily,
                lockingWedge,
                plugEmptyCavities,
                sparePositions,
                spareFusesPerRating,
                slackPercent,
                endAllowance,
                cutStep,
                pigtail,
                jumper,
                kind);
    }

    public Choices {
        devices = List.copyOf(devices);
        if (cutStep.value() < 1 || sparePositions < 0 || spareFusesPerRating < 0) {
            throw new IllegalArgumentException("the choices are out of range");
        }
    }
}
