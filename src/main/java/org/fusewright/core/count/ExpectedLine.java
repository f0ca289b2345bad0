package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What a bag should hold of one part: every place that needs it, spares included.
 *
 * @param quantity in the unit
 * @param unit "each", "leads" for wire that is counted as cut, or "m" for wire by length
 * @param places where the pieces go, such as "B1-2"; for spares "spare for B1-2"
 * @param cutsMm for wire: the cut lengths of its leads, longest first
 * @param leads for a seal: the outside diameters of the leads that it must take
 */
public record ExpectedLine(
        PartNumber part,
        String title,
        Likeness likeness,
        BigDecimal quantity,
        String unit,
        List<String> places,
        List<Long> cutsMm,
        Masses masses,
        Optional<LeadRange> leads) {

    public static final String EACH = "each";
    public static final String LEADS = "leads";
    public static final String METRES = "m";

    /** The thinnest and the thickest lead that a seal must take. */
    public record LeadRange(double thinnestMm, double thickestMm) {

        public LeadRange {
            if (!(thinnestMm > 0 && thinnestMm <= thickestMm)) {
                throw new IllegalArgumentException(
                        "leads run from thin to thick: " + thinnestMm + " to " + thickestMm);
            }
        }
    }

    public ExpectedLine {
        if (quantity.signum() <= 0) {
            throw new IllegalArgumentException("a line expects something, not " + quantity);
        }
        places = List.copyOf(places);
        cutsMm = List.copyOf(cutsMm);
    }

    public CountedKind kind() {
        return likeness.kind();
    }

    ExpectedLine withPieces(BigDecimal pieces, Masses heavy) {
        return new ExpectedLine(part, title, likeness, pieces, unit, places, cutsMm, heavy, leads);
    }
}
