package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.quantity.Celsius;
import org.jspecify.annotations.Nullable;

import java.util.Optional;

/**
 * What a device itself must do, in a circuit or as the main device of a feed: carry the load for
 * long, hold through its start, break a dead short, and open in time at its far end.
 */
final class DeviceRules {

    /** A device's earliest times are stated up to 100 h; longer is the same. */
    private static final double LONGEST_STATED_S = 360_000;

    private static final Basis EIGHTY_PERCENT =
            Basis.published(
                    "load at most 80 % of the rating (from memory: 125 % sizing of NEC and ABYC"
                            + " practice), re-rating: catalog data");
    private static final Basis MINIMUM_CURVE =
            Basis.published("earliest opening between the device's gates (ISO 8820-3 for fuses)");
    private static final Basis BREAKING =
            Basis.published("breaking capacity in catalog data (ISO 8820-3: 1,000 A for blades)");
    private static final Basis MAXIMUM_CURVE =
            Basis.published(
                    "latest opening between the device's gates; 5 s is the longest that the method"
                            + " of IEC 60364-4-43 covers");

    private DeviceRules() {}

    /**
     * Up to the share of its re-rated rating it passes, up to the whole of it a person must agree,
     * above it fails.
     */
    static Check load(
            CheckCode code,
            Subject subject,
            Device device,
            double carriedA,
            double share,
            Celsius surrounding) {
        double fullA = device.ratingA() * device.rerating().factorAt(surrounding);
        double limitA = share * fullA;
        String says =
                Say.amps(carriedA)
                        + " on a "
                        + Say.rating(device.ratingA())
                        + " "
                        + device.kind().code()
                        + (carriedA <= limitA ? " is within the " : " is more than the ")
                        + Say.amps(limitA)
                        + " that it should carry at "
                        + Math.round(surrounding.value())
                        + " C.";
        return Check.atMost(
                code,
                subject,
                new Measured(carriedA, limitA, "A"),
                carriedA <= fullA ? Verdict.CAUTION : Verdict.FAIL,
                says,
                EIGHTY_PERCENT);
    }

    /** Empty when nothing draws more at its start. */
    static Optional<Check> inrush(
            Subject subject, Device device, TimeCurrentBand band, StartUp startUp) {
        StartUp.@Nullable Step worst = null;
        double worstS = 0;
        for (StartUp.Step step : startUp.steps()) {
            double opensS = Math.min(LONGEST_STATED_S, band.earliestS(step.currentA()));
            if (worst == null || opensS / step.durationS() < worstS / worst.durationS()) {
                worst = step;
                worstS = opensS;
            }
        }
        if (worst == null) {
            return Optional.empty();
        }
        boolean holds = worstS >= worst.durationS();
        String says =
                "The start draws up to "
                        + Say.amps(worst.currentA())
                        + " for "
                        + Say.seconds(worst.durationS())
                        + "; the "
                        + Say.rating(device.ratingA())
                        + " "
                        + device.kind().code()
                        + (holds ? " holds that for " : " may open after ")
                        + Say.seconds(worstS)
                        + (holds ? " at least." : " already.");
        return Optional.of(
                Check.atLeast(
                        CheckCode.INRUSH,
                        subject,
                        new Measured(worstS, worst.durationS(), "s"),
                        Verdict.FAIL,
                        says,
                        MINIMUM_CURVE));
    }

    static Check interrupting(Subject subject, Device device, double highestA) {
        boolean breaks = highestA <= device.interruptingA();
        String says =
                "A dead short right behind it may draw "
                        + Say.amps(highestA)
                        + "; the device "
                        + (breaks ? "safely breaks " : "breaks only ")
                        + Say.amps(device.interruptingA())
                        + ".";
        return Check.atMost(
                CheckCode.INTERRUPTING_CAPACITY,
                subject,
                new Measured(highestA, device.interruptingA(), "A"),
                Verdict.FAIL,
                says,
                BREAKING);
    }

    /**
     * @param lowestA prospective short-circuit current at the far end
     */
    static Check faultClearing(Subject subject, TimeCurrentBand band, double lowestA) {
        double neededA = band.clearsFromA();
        boolean clears = lowestA >= neededA;
        String says =
                "A short at the far end draws "
                        + Say.amps(lowestA)
                        + "; the device needs "
                        + Say.amps(neededA)
                        + " to open within "
                        + Say.seconds(ShortCircuitWithstand.LONGEST_S)
                        + (clears ? "." : ", so it may feed the fault for long.");
        return Check.atLeast(
                CheckCode.FAULT_CLEARING,
                subject,
                new Measured(lowestA, neededA, "A"),
                Verdict.FAIL,
                says,
                MAXIMUM_CURVE);
    }
}
