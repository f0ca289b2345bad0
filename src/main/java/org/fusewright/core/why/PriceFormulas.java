package org.fusewright.core.why;

import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.Optional;

/** How prices came about, as formulas in the job's currency. */
final class PriceFormulas {

    private PriceFormulas() {}

    /** Each group's lines together, summed. */
    static Derivation total(Kit kit) {
        return new Derivation(
                "P",
                Phrase.of("formula.all-parts", kit.job().currency().getCode()),
                Unit.NONE,
                PartsFormulas.sum(
                        kit.parts(),
                        line -> line.extended().getAmount().doubleValue(),
                        (index, sum, group) ->
                                Quantity.workedOut("P_" + index, sum, Unit.NONE, group)));
    }

    /** A part may stand in several groups: "spare:PYC-15". */
    private static String nameOf(PartLine line) {
        return line.group().code() + ":" + line.part().number().value();
    }

    /** A quantity at its unit price; the line rounds this half up to the minor unit. */
    static Optional<Derivation> line(Kit kit, String name) {
        return kit.parts().stream()
                .filter(line -> name.equals(nameOf(line)))
                .findFirst()
                .map(
                        line ->
                                new Derivation(
                                        "P",
                                        Phrase.of(
                                                "formula.line",
                                                line.part().number().value(),
                                                kit.job().currency().getCode()),
                                        Unit.NONE,
                                        of(Quantity.workedOut(
                                                        "N",
                                                        line.quantity().doubleValue(),
                                                        Unit.NONE,
                                                        Phrase.of("bill.quantity")))
                                                .times(
                                                        of(
                                                                Quantity.catalog(
                                                                        "p_1",
                                                                        line.unitPrice()
                                                                                .getAmount()
                                                                                .doubleValue(),
                                                                        Unit.NONE,
                                                                        Phrase.of(
                                                                                "formula.unit-price"))))));
    }
}
