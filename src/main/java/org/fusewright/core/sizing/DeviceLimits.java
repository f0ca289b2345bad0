package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.job.Supply;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

/**
 * What a circuit's device must meet by itself, whatever its leads are: it
 *
 * <ul>
 *   <li>carries its loads with at most 80 % of its rating (75 to 80 % is usual; from memory), or
 *       100 % when all of them are momentary, re-rated for the temperature in the block,
 *   <li>may be used at the charging voltage,
 *   <li>holds through the start of all its loads at its earliest opening, and
 *   <li>breaks the prospective short-circuit current (ISO 8820-3: 1,000 A for blade fuses).
 * </ul>
 */
final class DeviceLimits {

    /** Share of its rating that a device carries for long; from memory. */
    static final double CONTINUOUS_SHARE = 0.8;

    /** In the order in which they are kept when no device meets all. */
    enum Limit {
        LOAD(CheckCode.RUNNING_LOAD),
        VOLTAGE(CheckCode.INTERRUPTING_CAPACITY),
        START(CheckCode.INRUSH),
        SHORT(CheckCode.INTERRUPTING_CAPACITY);

        private final CheckCode code;

        Limit(CheckCode code) {
            this.code = code;
        }

        /** The check that a device which misses the limit will not pass. */
        CheckCode code() {
            return code;
        }
    }

    private static final Limit[] LIMITS = Limit.values();

    private final DeviceDemand demand;
    private final double chargingV;
    private final PlacedStock placed;
    private final double prospectiveA;

    /**
     * @param prospectiveA short-circuit current right behind the device; 0 when not known yet
     */
    DeviceLimits(DeviceDemand demand, Supply supply, PlacedStock placed, double prospectiveA) {
        this.demand = demand;
        this.chargingV = supply.chargingV();
        this.placed = placed;
        this.prospectiveA = prospectiveA;
    }

    boolean areMetBy(Device device) {
        return firstMissed(device) == null;
    }

    /** Nothing when the device meets them all. */
    @Nullable Limit firstMissed(Device device) {
        for (Limit limit : LIMITS) {
            if (!meets(device, limit)) {
                return limit;
            }
        }
        return null;
    }

    private boolean meets(Device device, Limit limit) {
        return switch (limit) {
            case LOAD -> demand.carriedA() <= carriesA(device);
            case VOLTAGE -> device.maxVoltageV() >= chargingV;
            case START ->
                    demand.startUp().steps().isEmpty()
                            || demand.startUp().isHeldBy(placed.bandInBlock(device));
            case SHORT -> device.interruptingA() >= prospectiveA;
        };
    }

    double carriesA(Device device) {
        return demand.share() * placed.bandInBlock(device).ratedA();
    }

    /**
     * The device to go on with when none suits: the first in the order of preference that keeps
     * most of the limits, the last ones given up first; else the largest.
     */
    Device leastBad() {
        for (int kept = LIMITS.length; kept > 0; kept--) {
            for (Device device : demand.candidates()) {
                @Nullable Limit missed = firstMissed(device);
                if (missed == null || missed.ordinal() >= kept) {
                    return device;
                }
            }
        }
        Device largest = demand.candidates().getFirst();
        for (Device device : demand.candidates()) {
            if (device.ratingA() > largest.ratingA()) {
                largest = device;
            }
        }
        return largest;
    }

    /** What a device does that misses a limit; goes behind its name. */
    Text says(Device device, Limit missed) {
        return switch (missed) {
            case LOAD ->
                    Phrase.of(
                            "device-misses.load",
                            Amount.amps(carriesA(device)),
                            Amount.amps(demand.carriedA()));
            case VOLTAGE -> Phrase.of("device-misses.voltage", Amount.volts(device.maxVoltageV()));
            case START -> Phrase.of("device-misses.start", Amount.amps(demand.startUp().peakA()));
            case SHORT ->
                    Phrase.of(
                            "device-misses.short",
                            Amount.amps(device.interruptingA()),
                            Amount.amps(prospectiveA));
        };
    }
}
