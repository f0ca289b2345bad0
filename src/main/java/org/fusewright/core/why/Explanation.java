package org.fusewright.core.why;

import org.fusewright.core.check.Check;
import org.fusewright.core.formula.Derivation;
import org.fusewright.core.words.Text;

import java.util.Optional;

/**
 * Where a figure of a kit, or the two figures of a check, are from.
 *
 * @param value how the figure came about; empty when it is read, counted or stated
 * @param limit the same of a check's limit
 * @param check empty for a figure that stands for itself
 * @param sources where figures without a formula are from
 */
public record Explanation(
        Text title,
        Optional<Derivation> value,
        Optional<Derivation> limit,
        Optional<Check> check,
        Optional<Text> sources) {

    static Explanation of(Text title, Derivation value) {
        return new Explanation(
                title, Optional.of(value), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** How value and limit of a check lie to each other: "<=", ">", ... */
    public static String relation(Check check) {
        double beyond = check.value() - check.limit();
        return beyond == 0 ? "=" : beyond < 0 ? "<" : ">";
    }
}
