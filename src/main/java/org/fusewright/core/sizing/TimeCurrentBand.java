package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.TimeCurrent.Gate;
import org.fusewright.core.quantity.Celsius;
import org.jspecify.annotations.Nullable;

import java.util.List;

/**
 * How long a device takes to open, at the earliest and at the latest: straight lines between its
 * gates when both current and time are drawn in logarithms. Gates are those of ISO 8820-3 for blade
 * fuses and of SAE J553 types for breakers, as the catalog states them; an open end sets no point.
 *
 * <p>Beyond the last gate, where nothing is stated (our own rule):
 *
 * <ul>
 *   <li>fuse: constant I2t from there, the law of an element that melts before heat leaves it;
 *   <li>manual-reset breaker: the same, but never faster than 10 ms to open its contacts (common
 *       practice, no published source);
 *   <li>auto-reset breaker: no faster than at its last gate, as its electronics need their time;
 *       for the earliest opening it may open at once.
 * </ul>
 *
 * <p>Under its first gate a device does not open. A rating that rises in the cold slows it down and
 * is counted; one that sinks in the heat only makes it open earlier.
 */
final class TimeCurrentBand {

    private static final double CONTACTS_OPEN_S = 0.010;

    private final DeviceKind kind;
    private final List<Gate> gates;
    private final double earlyRatedA;
    private final double lateRatedA;
    private final double interruptingA;

    private TimeCurrentBand(Device device, double factor) {
        this.kind = device.kind();
        this.gates = device.gates().gates();
        this.earlyRatedA = device.ratingA() * factor;
        this.lateRatedA = device.ratingA() * Math.max(1, factor);
        this.interruptingA = device.interruptingA();
    }

    static TimeCurrentBand of(Device device, Celsius surrounding) {
        return new TimeCurrentBand(device, device.rerating().factorAt(surrounding));
    }

    /** Earliest opening in seconds; infinite when the current is held. */
    double earliestS(double currentA) {
        double percent = 100 * currentA / earlyRatedA;
        @Nullable Gate below = null;
        for (Gate gate : gates) {
            if (gate.minS() <= 0) {
                continue;
            }
            if (percent <= gate.percent()) {
                return below == null
                        ? Double.POSITIVE_INFINITY
                        : between(
                                percent,
                                below.percent(),
                                below.minS(),
                                gate.percent(),
                                gate.minS());
            }
            below = gate;
        }
        if (below == null || kind == DeviceKind.AUTO_RESET) {
            return 0;
        }
        return constantEnergy(percent, below.percent(), below.minS());
    }

    /** Latest opening in seconds; infinite when it may never open. */
    double latestS(double currentA) {
        double percent = 100 * currentA / lateRatedA;
        @Nullable Gate below = null;
        for (Gate gate : gates) {
            if (Double.isInfinite(gate.maxS())) {
                continue;
            }
            if (percent < gate.percent()) {
                return below == null
                        ? Double.POSITIVE_INFINITY
                        : between(
                                percent,
                                below.percent(),
                                below.maxS(),
                                gate.percent(),
                                gate.maxS());
            }
            below = gate;
        }
        if (below == null) {
            return Double.POSITIVE_INFINITY;
        }
        return switch (kind) {
            case FUSE -> constantEnergy(percent, below.percent(), below.maxS());
            case MANUAL_RESET ->
                    Math.min(
                            below.maxS(),
                            Math.max(
                                    CONTACTS_OPEN_S,
                                    constantEnergy(percent, below.percent(), below.maxS())));
            case AUTO_RESET -> below.maxS();
        };
    }

    /** The least current that surely opens the device within a time, in amperes. */
    double surelyOpensA(double withinS) {
        @Nullable Gate below = null;
        for (Gate gate : gates) {
            if (Double.isInfinite(gate.maxS())) {
                continue;
            }
            if (gate.maxS() <= withinS) {
                double percent =
                        below == null
                                ? gate.percent()
                                : between(
                                        withinS,
                                        below.maxS(),
                                        below.percent(),
                                        gate.maxS(),
                                        gate.percent());
                return percent / 100 * lateRatedA;
            }
            below = gate;
        }
        if (below == null || kind == DeviceKind.AUTO_RESET) {
            return interruptingA;
        }
        return below.percent() / 100 * lateRatedA * Math.sqrt(below.maxS() / withinS);
    }

    /**
     * The most energy that it lets through for any short between two currents, in A2s, each counted
     * for at most {@code longestS}. Between gates I2t rises or falls all the way, so the worst lies
     * at an end, at a gate or where the time is cut off.
     */
    double letThroughA2s(double fromA, double toA, double longestS) {
        double worst = Math.max(energyA2s(fromA, longestS), energyA2s(toA, longestS));
        double cutOffA = surelyOpensA(longestS);
        if (fromA < cutOffA && cutOffA < toA) {
            worst = Math.max(worst, energyA2s(cutOffA, longestS));
        }
        for (Gate gate : gates) {
            double gateA = gate.percent() / 100 * lateRatedA;
            if (fromA < gateA && gateA < toA) {
                worst = Math.max(worst, energyA2s(gateA, longestS));
            }
        }
        return worst;
    }

    private double energyA2s(double currentA, double longestS) {
        return currentA * currentA * Math.min(longestS, latestS(currentA));
    }

    private static double constantEnergy(double percent, double lastPercent, double lastS) {
        double ratio = lastPercent / percent;
        return lastS * ratio * ratio;
    }

    private static double between(double x, double x1, double y1, double x2, double y2) {
        double share = Math.log(x / x1) / Math.log(x2 / x1);
        return y1 * Math.pow(y2 / y1, share);
    }
}
