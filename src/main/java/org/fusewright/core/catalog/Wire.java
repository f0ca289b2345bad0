package org.fusewright.core.catalog;

import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;

/**
 * Insulated wire of one family, size and colour, counted in metres.
 *
 * @param copperMm2 least copper area, as the wire's standard or maker states
 * @param outsideMm largest outside diameter, which a seal must take
 * @param milliohmPerM highest resistance at 20 C
 * @param classC temperature class: the conductor's highest continuous temperature
 * @param insulation the insulation's material, such as "XLPE" or "PVC"
 */
public record Wire(
        Item item,
        String family,
        WireSize size,
        WireColour colour,
        double copperMm2,
        double outsideMm,
        double milliohmPerM,
        double classC,
        String insulation)
        implements Part {

    public Wire {
        Require.positive("copperMm2", copperMm2);
        Require.positive("outsideMm", outsideMm);
        Require.positive("milliohmPerM", milliohmPerM);
        Require.positive("classC", classC);
    }
}
