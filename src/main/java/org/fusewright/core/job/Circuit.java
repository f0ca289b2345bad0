package org.fusewright.core.job;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One protected branch: feed, device, optional relay, leads, loads. What the job leaves out is
 * already filled in with the job's choices.
 *
 * @param runM from the block to the load, or to the splice when there is more than one load
 * @param devices device kinds in the order of preference; at least one
 * @param ratingA rating that the job fixes, in amperes
 * @param gauge trunk size that the job fixes
 * @param colour empty: the feed's usual colour
 * @param place of the device; empty: anywhere
 * @param maxDropPercent most voltage drop to a load, as a share of the nominal voltage
 */
public record Circuit(
        String id,
        String title,
        String feed,
        String location,
        boolean essential,
        double runM,
        ReturnPath returnPath,
        Optional<WireColour> colour,
        List<DeviceKind> devices,
        OptionalDouble ratingA,
        Optional<WireSize> gauge,
        double maxDropPercent,
        Optional<RelayUse> relay,
        Optional<BlockPlace> place,
        List<Load> loads) {

    public Circuit {
        devices = List.copyOf(devices);
        loads = List.copyOf(loads);
        if (devices.isEmpty() || loads.isEmpty()) {
            throw new IllegalArgumentException("circuit " + id + " needs a device kind and a load");
        }
        if (!(runM > 0) || !(maxDropPercent > 0)) {
            throw new IllegalArgumentException("circuit " + id + " is out of range");
        }
    }

    Circuit withRunM(double length) {
        return new Circuit(
                id,
                title,
                feed,
                location,
                essential,
                length,
                returnPath,
                colour,
                devices,
                ratingA,
                gauge,
                maxDropPercent,
                relay,
                place,
                loads);
    }

    public Circuit withPlace(Optional<BlockPlace> other) {
        return new Circuit(
                id,
                title,
                feed,
                location,
                essential,
                runM,
                returnPath,
                colour,
                devices,
                ratingA,
                gauge,
                maxDropPercent,
                relay,
                other,
                loads);
    }

    /** With other kinds of device to choose from, in the order of preference. */
    public Circuit withDevices(List<DeviceKind> kinds) {
        return new Circuit(
                id,
                title,
                feed,
                location,
                essential,
                runM,
                returnPath,
                colour,
                kinds,
                ratingA,
                gauge,
                maxDropPercent,
                relay,
                place,
                loads);
    }

    public Circuit withFeed(String other) {
        return new Circuit(
                id,
                title,
                other,
                location,
                essential,
                runM,
                returnPath,
                colour,
                devices,
                ratingA,
                gauge,
                maxDropPercent,
                relay,
                place,
                loads);
    }

    /** The circuit whose device this one uses, when it has none of its own. */
    public Optional<String> contactFrom() {
        return relay.flatMap(RelayUse::contactFrom);
    }

    /** Single loads, each counted as often as the job says. */
    public int loadCount() {
        int count = 0;
        for (Load load : loads) {
            count += load.count();
        }
        return count;
    }

    public boolean isMomentary() {
        for (Load load : loads) {
            if (load.duty() != Duty.MOMENTARY) {
                return false;
            }
        }
        return true;
    }
}
