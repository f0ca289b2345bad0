package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;

/**
 * Where a main device sits and what it leaves to the devices behind it.
 *
 * <p>Source: at it, within 7 in of wire, or within 40 in when the lead is enclosed all the way (33
 * CFR 183.455). Selectivity: twice the largest rating behind it, so that only the branch opens
 * (common practice, from memory); not larger than that rating, it fails.
 */
final class MainDeviceRules {

    static final double NEAR_SOURCE_M = 7 * 0.0254;
    static final double NEAR_SOURCE_ENCLOSED_M = 40 * 0.0254;
    static final double SELECTIVE_RATIO = 2;

    private static final Basis SOURCE = Basis.published("33 CFR 183.455: 7 in, 40 in enclosed");
    private static final Basis HOLDER = Basis.catalog("the holder's range of conductor areas");
    private static final Basis TWO_TO_ONE = Basis.commonPractice("2 : 1, from memory");

    private MainDeviceRules() {}

    static Check sourceProtection(Subject subject, double sourceDistanceM) {
        boolean near = sourceDistanceM <= NEAR_SOURCE_M;
        boolean nearEnclosed = sourceDistanceM <= NEAR_SOURCE_ENCLOSED_M;
        String says =
                "The main device sits "
                        + Say.metres(sourceDistanceM)
                        + " from the source"
                        + (near
                                ? ", near enough."
                                : nearEnclosed
                                        ? "; beyond 7 in (0.18 m) enclose that lead all the way."
                                        : "; that much unprotected lead must not be, 40 in (1.02 m)"
                                                + " at most and enclosed.");
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
        String says =
                "Holder "
                        + holder.number()
                        + " takes "
                        + Say.area(holder.minAreaMm2())
                        + " to "
                        + Say.area(holder.maxAreaMm2())
                        + "; "
                        + wire.wire().size()
                        + " has "
                        + Say.area(wire.areaMm2())
                        + ".";
        Measured measured =
                new Measured(
                        wire.areaMm2(), tooThin ? holder.minAreaMm2() : holder.maxAreaMm2(), "mm2");
        Subject lead = subject.detail("holder");
        return tooThin
                ? Check.atLeast(CheckCode.TERMINAL_FIT, lead, measured, Verdict.FAIL, says, HOLDER)
                : Check.atMost(CheckCode.TERMINAL_FIT, lead, measured, Verdict.FAIL, says, HOLDER);
    }

    static Check selectivity(Subject subject, Device main, double largestBranchA) {
        double ratio = main.ratingA() / largestBranchA;
        String says =
                "Main "
                        + Say.rating(main.ratingA())
                        + " over branch "
                        + Say.rating(largestBranchA)
                        + (ratio >= SELECTIVE_RATIO
                                ? ": the branch opens first."
                                : ratio > 1
                                        ? ": in a hard short both may open, and the whole feed"
                                                + " goes dark."
                                        : ": the main device opens with the branch, or before"
                                                + " it.");
        return Check.atLeast(
                CheckCode.SELECTIVITY,
                subject,
                new Measured(ratio, SELECTIVE_RATIO, ""),
                ratio > 1 ? Verdict.CAUTION : Verdict.FAIL,
                says,
                TWO_TO_ONE);
    }
}
