package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

import java.util.List;

/**
 * Where a main device sits and what it leaves to the devices behind it.
 *
 * <p>Source: at it, within 7 in of wire, or within 40 in when the lead is enclosed all the way (33
 * CFR 183.455). Selectivity: only the branch opens, by the gates of both over the whole range of
 * fault currents ({@link Selectivity}); a main device that is not larger than a branch's fails.
 */
final class MainDeviceRules {

    static final double NEAR_SOURCE_M = 7 * 0.0254;
    static final double NEAR_SOURCE_ENCLOSED_M = 40 * 0.0254;

    private static final Basis SOURCE = Basis.of("basis.source-protection");
    private static final Basis HOLDER = Basis.of("basis.holder-fit");
    private static final Basis GATES = Basis.of("basis.selectivity");
    private static final Phrase IN_HOLDER = Phrase.of("subject.holder");

    private MainDeviceRules() {}

    static Check sourceProtection(Subject subject, double sourceDistanceM) {
        boolean near = sourceDistanceM <= NEAR_SOURCE_M;
        boolean nearEnclosed = sourceDistanceM <= NEAR_SOURCE_ENCLOSED_M;
        Phrase says =
                Phrase.of(
                        near
                                ? "source-protection.near"
                                : nearEnclosed
                                        ? "source-protection.enclose"
                                        : "source-protection.far",
                        Amount.metres(sourceDistanceM));
        return Check.atMost(
                CheckCode.SOURCE_PROTECTION,
                subject,
                new Measured(sourceDistanceM, NEAR_SOURCE_M, "m"),
                nearEnclosed ? Verdict.CAUTION : Verdict.FAIL,
                says,
                SOURCE);
    }

    /** Whether a size that the job fixes goes into the main device's holder. */
    static Check holderFit(Subject subject, Holder holder, LaidWire wire) {
        boolean tooThin = wire.areaMm2() < holder.minAreaMm2();
        Phrase says =
                Phrase.of(
                        "holder-fit.takes",
                        holder.number().value(),
                        Amount.area(holder.minAreaMm2()),
                        Amount.area(holder.maxAreaMm2()),
                        wire.wire().size().toString(),
                        Amount.area(wire.areaMm2()));
        Measured measured =
                new Measured(
                        wire.areaMm2(), tooThin ? holder.minAreaMm2() : holder.maxAreaMm2(), "mm2");
        Subject lead = subject.detail(IN_HOLDER);
        return tooThin
                ? Check.atLeast(CheckCode.TERMINAL_FIT, lead, measured, Verdict.FAIL, says, HOLDER)
                : Check.atMost(CheckCode.TERMINAL_FIT, lead, measured, Verdict.FAIL, says, HOLDER);
    }

    /**
     * The branch that holds over the least part of its range.
     *
     * @param band of the main device at the temperature around it
     * @param branches one at least
     */
    static Check selectivity(
            Subject subject, Device main, TimeCurrentBand band, List<Selectivity.Branch> branches) {
        Selectivity worst = Selectivity.of(band, branches.getFirst());
        for (int i = 1; i < branches.size(); i++) {
            Selectivity next = Selectivity.of(band, branches.get(i));
            if (holdsLess(main, next, worst)) {
                worst = next;
            }
        }
        boolean larger = isLarger(main, worst);
        double prospectiveA = worst.branch().prospectiveA();
        return Check.atLeast(
                CheckCode.SELECTIVITY,
                subject,
                new Measured(larger ? worst.holdsToA() : 0, prospectiveA, "A"),
                larger ? Verdict.CAUTION : Verdict.FAIL,
                Phrase.of(
                        outcome(worst, larger),
                        worst.branch().circuit(),
                        Amount.rating(worst.branch().device().ratingA()),
                        Amount.rating(main.ratingA()),
                        Amount.amps(worst.holdsToA())),
                GATES);
    }

    private static boolean isLarger(Device main, Selectivity selectivity) {
        return main.ratingA() > selectivity.branch().device().ratingA();
    }

    private static boolean holdsLess(Device main, Selectivity one, Selectivity other) {
        boolean larger = isLarger(main, one);
        return larger == isLarger(main, other) ? one.share() < other.share() : !larger;
    }

    private static String outcome(Selectivity worst, boolean larger) {
        if (!larger) {
            return "selectivity.none";
        }
        if (worst.isFull()) {
            return "selectivity.full";
        }
        return worst.isLostInOverload() ? "selectivity.lost-in-overload" : "selectivity.partial";
    }
}
