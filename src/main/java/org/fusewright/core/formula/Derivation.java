package org.fusewright.core.formula;

import org.fusewright.core.formula.Expression.Applied;
import org.fusewright.core.formula.Expression.Joined;
import org.fusewright.core.formula.Expression.Known;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How one figure follows from others.
 *
 * @param symbol what the figure is called in formulas
 * @param meaning what the figure is in this job
 */
public record Derivation(String symbol, Text meaning, Unit unit, Expression expression) {

    /** What the figure becomes when one value is a little larger and all others stay. */
    public record Change(Quantity quantity, double raised, double result) {}

    public Derivation {
        Map<String, Quantity> named = new LinkedHashMap<>();
        for (Quantity quantity : listQuantities(expression)) {
            Quantity other = named.putIfAbsent(lower(quantity.name()), quantity);
            if (other != null && !other.equals(quantity)) {
                throw new IllegalArgumentException("two values are called " + quantity.name());
            }
        }
        if (named.containsKey(lower(symbol))) {
            throw new IllegalArgumentException(symbol + " stands on both sides");
        }
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    public double result() {
        return expression.value(Quantity::value);
    }

    /** Each named value once, as they are met from left to right. */
    public List<Quantity> quantities() {
        return listQuantities(expression).stream().distinct().toList();
    }

    private static List<Quantity> listQuantities(Expression expression) {
        return switch (expression) {
            case Known(Quantity quantity) -> List.of(quantity);
            case Expression.Fixed fixed -> List.of();
            case Joined joined -> {
                List<Quantity> both = new ArrayList<>(listQuantities(joined.left()));
                both.addAll(listQuantities(joined.right()));
                yield both;
            }
            case Applied applied ->
                    applied.arguments().stream().flatMap(a -> listQuantities(a).stream()).toList();
        };
    }

    /** For each value that could be another one; see {@link Quantity#raised()}. */
    public List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        for (Quantity quantity : quantities()) {
            double raised = quantity.raised();
            if (raised != quantity.value()) {
                changes.add(
                        new Change(
                                quantity,
                                raised,
                                expression.value(
                                        each -> each.equals(quantity) ? raised : each.value())));
            }
        }
        return changes;
    }
}
