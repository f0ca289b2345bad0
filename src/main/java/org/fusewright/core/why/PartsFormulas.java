package org.fusewright.core.why;

import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Expression;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** What is summed over the lines of the parts list, as formulas by group. */
final class PartsFormulas {

    private PartsFormulas() {}

    /** One figure of a group's lines together. */
    interface OfGroup {
        Quantity quantity(int index, double sum, Phrase group);
    }

    static Derivation mass(Kit kit) {
        return new Derivation(
                "m",
                Phrase.of("formula.all-mass"),
                Unit.GRAM,
                sum(
                        kit.parts(),
                        PartLine::massG,
                        (index, massG, group) ->
                                Quantity.workedOut("m_" + index, massG, Unit.GRAM, group)));
    }

    static Derivation lines(List<PartLine> lines, Phrase meaning) {
        return new Derivation(
                "N",
                meaning,
                Unit.NONE,
                sum(
                        lines,
                        line -> 1,
                        (index, many, group) -> Quantity.count("n_" + index, (int) many, group)));
    }

    /** Summed by group, and the groups then. */
    static Expression sum(List<PartLine> lines, ToDoubleFunction<PartLine> figure, OfGroup of) {
        Map<PartGroup, Double> sums = new EnumMap<>(PartGroup.class);
        for (PartLine line : lines) {
            sums.merge(line.group(), figure.applyAsDouble(line), Double::sum);
        }
        List<Expression> terms = new ArrayList<>();
        sums.forEach(
                (group, sum) ->
                        terms.add(
                                of(
                                        of.quantity(
                                                terms.size() + 1,
                                                sum,
                                                Phrase.of("part-group." + group.code())))));
        return Expression.sum(terms);
    }
}
