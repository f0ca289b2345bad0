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

/** What is summed over the lines of the parts list, as formulas by group. */
final class PartsFormulas {

    private PartsFormulas() {}

    static Derivation mass(Kit kit) {
        Map<PartGroup, Double> sums = new EnumMap<>(PartGroup.class);
        for (PartLine line : kit.parts()) {
            sums.merge(line.group(), line.massG(), Double::sum);
        }
        List<Expression> terms = new ArrayList<>();
        sums.forEach(
                (group, massG) ->
                        terms.add(
                                of(
                                        Quantity.workedOut(
                                                "m_" + (terms.size() + 1),
                                                massG,
                                                Unit.GRAM,
                                                Phrase.of("part-group." + group.code())))));
        return new Derivation("m", Phrase.of("formula.all-mass"), Unit.GRAM, Expression.sum(terms));
    }

    static Derivation lines(List<PartLine> lines, Phrase meaning) {
        Map<PartGroup, Integer> many = new EnumMap<>(PartGroup.class);
        for (PartLine line : lines) {
            many.merge(line.group(), 1, Integer::sum);
        }
        List<Expression> terms = new ArrayList<>();
        many.forEach(
                (group, number) ->
                        terms.add(
                                of(
                                        Quantity.count(
                                                "n_" + (terms.size() + 1),
                                                number,
                                                Phrase.of("part-group." + group.code())))));
        return new Derivation("N", meaning, Unit.NONE, Expression.sum(terms));
    }
}
