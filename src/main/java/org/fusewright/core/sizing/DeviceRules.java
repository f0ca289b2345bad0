package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.jspecify.annotations.Nullable;

import java.util.Optional;

/**
 * What a device itself must do, in a circuit or as the main device of a feed: carry the load for
 * long, hold through its start, break a dead short, and open in time at its far end.
 */
final class DeviceRules {

    /** A device's earliest times are stated up to 100 h; longer is the same. */
    private static final double LONGEST_STATED_S = 360_000;

    private static final Basis EIGHTY_PERCENT = Basis.of("basis.load");
    private static final Basis MINIMUM_CURVE = Basis.of("basis.inrush");
    private static final Basis BREAKING = Basis.of("basis.interrupting-capacity");
    private static final Basis MAXIMUM_CURVE = Basis.of("basis.fault-clearing");

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
        Phrase says =
                Phrase.of(
                        carriedA <= limitA ? "load.within" : "load.beyond",
                        Amount.amps(carriedA),
                        DeviceWords.rated(device),
                        Amount.amps(limitA),
                        Amount.celsius(surrounding.value()));
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
        Phrase says =
                Phrase.of(
                        holds ? "inrush.holds" : "inrush.opens",
                        Amount.amps(worst.currentA()),
                        Amount.seconds(worst.durationS()),
                        DeviceWords.rated(device),
                        Amount.seconds(worstS));
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
        Phrase says =
                Phrase.of(
                        breaks ? "interrupting-capacity.breaks" : "interrupting-capacity.too-much",
                        Amount.amps(highestA),
                        Amount.amps(device.interruptingA()));
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
        Phrase says =
                Phrase.of(
                        clears ? "fault-clearing.opens" : "fault-clearing.feeds-on",
                        Amount.amps(lowestA),
                        Amount.amps(neededA),
                        Amount.seconds(ShortCircuitWithstand.LONGEST_S));
        return Check.atLeast(
                CheckCode.FAULT_CLEARING,
                subject,
                new Measured(lowestA, neededA, "A"),
                Verdict.FAIL,
                says,
                MAXIMUM_CURVE);
    }
}
