package org.fusewright.core.sizing;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;

/**
 * Where splices lie: not within 12 in (0.305 m) of a termination, and not more than one on a lead
 * between two terminations (AC 43.13-1B chapter 11, splices); a link between two splices counts as
 * the latter. And whether each splice has a stocked part for its leads.
 */
final class SplicePlacement {

    static final double CLEAR_M = 12 * 0.0254;

    private static final Basis PLACE = Basis.of("basis.splice-place");
    private static final Basis PART = Basis.of("basis.splice-part");
    private static final Phrase FITS = Phrase.of("splice-placement.fits");
    private static final Phrase STANDS_IN = Phrase.of("splice-placement.stands-in");

    private static final Phrase PARTS = Phrase.of("subject.splice-parts");

    private SplicePlacement() {}

    /** Nothing when there is no splice. */
    static List<Check> list(
            Subject subject, List<SizedSplice> splices, boolean partsFit, List<LaidLead> leads) {
        if (splices.isEmpty()) {
            return List.of();
        }
        List<Check> checks = new ArrayList<>(2);
        @Nullable LaidLead nearest = null;
        for (LaidLead lead : leads) {
            if (lead.endsAtSplice()
                    && (nearest == null || lead.lead().routeM() < nearest.lead().routeM())) {
                nearest = lead;
            }
        }
        if (nearest != null) {
            checks.add(place(subject, nearest.lead()));
        }
        checks.add(
                Check.atLeast(
                        CheckCode.SPLICE_PLACEMENT,
                        subject.detail(PARTS),
                        new Measured(partsFit ? 1 : 0, 1, ""),
                        Verdict.FAIL,
                        partsFit ? FITS : STANDS_IN,
                        PART));
        return checks;
    }

    private static Check place(Subject subject, Lead nearest) {
        boolean clear = nearest.routeM() >= CLEAR_M;
        return Check.atLeast(
                CheckCode.SPLICE_PLACEMENT,
                subject,
                new Measured(nearest.routeM(), CLEAR_M, "m"),
                Verdict.CAUTION,
                Phrase.of(
                        clear ? "splice-placement.clear" : "splice-placement.near",
                        Amount.metres(nearest.routeM()),
                        nearest.id()),
                PLACE);
    }
}
