package org.fusewright.jobs;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.words.Text;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What differs between the kits of two revisions, both planned from one catalog.
 *
 * @param priced whether prices are told; else they are zero
 * @param before the total of the first kit
 * @param after the total of the second
 * @param parts the lines of the parts list that differ
 * @param verdicts the checks whose verdict differs
 */
public record KitDifference(
        boolean priced,
        Money before,
        Money after,
        List<PartChange> parts,
        List<VerdictChange> verdicts) {
    /**
     * A part of which another quantity is needed, or at another price.
     *
     * @param before quantity, in pieces or metres; zero where the part is new
     * @param after as before
     * @param extendedBefore the sum of the line
     * @param extendedAfter as before
     */
    public record PartChange(
            String part,
            String title,
            PartGroup group,
            String unit,
            BigDecimal before,
            BigDecimal after,
            Money extendedBefore,
            Money extendedAfter) {}

    /**
     * A check with another verdict.
     *
     * @param subject in words
     * @param before empty where the check was not made; then a pass counts as no change
     * @param after as before
     * @param says the sentence of the later check; of the earlier one where it is gone
     */
    public record VerdictChange(
            String code,
            Text subject,
            Optional<Verdict> before,
            Optional<Verdict> after,
            Text says) {}

    private record LineKey(PartGroup group, String part) {}

    private record CheckKey(String code, Text subject) {}

    public KitDifference {
        parts = List.copyOf(parts);
        verdicts = List.copyOf(verdicts);
    }

    public static KitDifference between(Kit before, Kit after) {
        return new KitDifference(
                before.priced() && after.priced(),
                before.totals().parts(),
                after.totals().parts(),
                partChanges(before, after),
                verdictChanges(before, after));
    }

    /** What the second kit costs more; empty when they are in different currencies. */
    public Optional<Money> dearer() {
        return priced && before.isSameCurrency(after)
                ? Optional.of(after.minus(before))
                : Optional.empty();
    }

    private static List<PartChange> partChanges(Kit before, Kit after) {
        Map<LineKey, PartLine> old = lines(before);
        Map<LineKey, PartLine> now = lines(after);
        List<PartChange> changes = new ArrayList<>();
        for (LineKey key : union(old.keySet(), now.keySet())) {
            Optional<PartLine> was = Optional.ofNullable(old.get(key));
            Optional<PartLine> is = Optional.ofNullable(now.get(key));
            PartLine line = is.or(() -> was).orElseThrow();
            PartChange change =
                    new PartChange(
                            key.part(),
                            line.part().title(),
                            key.group(),
                            line.unit(),
                            was.map(PartLine::quantity).orElse(BigDecimal.ZERO),
                            is.map(PartLine::quantity).orElse(BigDecimal.ZERO),
                            was.map(PartLine::extended).orElse(nothing(before)),
                            is.map(PartLine::extended).orElse(nothing(after)));
            if (change.before().compareTo(change.after()) != 0
                    || !change.extendedBefore().equals(change.extendedAfter())) {
                changes.add(change);
            }
        }
        return changes;
    }

    private static Money nothing(Kit kit) {
        return Money.zero(kit.totals().parts().getCurrencyUnit());
    }

    private static Map<LineKey, PartLine> lines(Kit kit) {
        Map<LineKey, PartLine> lines = new LinkedHashMap<>();
        kit.parts()
                .forEach(
                        line ->
                                lines.put(
                                        new LineKey(line.group(), line.part().number().value()),
                                        line));
        return lines;
    }

    private static List<VerdictChange> verdictChanges(Kit before, Kit after) {
        Map<CheckKey, Check> old = checks(before);
        Map<CheckKey, Check> now = checks(after);
        List<VerdictChange> changes = new ArrayList<>();
        for (CheckKey key : union(old.keySet(), now.keySet())) {
            Optional<Check> was = Optional.ofNullable(old.get(key));
            Optional<Check> is = Optional.ofNullable(now.get(key));
            if (verdict(was) != verdict(is)) {
                changes.add(
                        new VerdictChange(
                                key.code(),
                                key.subject(),
                                was.map(Check::verdict),
                                is.map(Check::verdict),
                                is.or(() -> was).orElseThrow().says()));
            }
        }
        return changes;
    }

    private static Verdict verdict(Optional<Check> check) {
        return check.map(Check::verdict).orElse(Verdict.PASS);
    }

    /** Each check by what it is; the worst one where several are alike. */
    private static Map<CheckKey, Check> checks(Kit kit) {
        Map<CheckKey, Check> checks = new LinkedHashMap<>();
        for (Check check : kit.checks()) {
            checks.merge(
                    new CheckKey(check.code().code(), check.subject().text()),
                    check,
                    (a, b) -> a.verdict().compareTo(b.verdict()) >= 0 ? a : b);
        }
        return checks;
    }

    private static <T> Set<T> union(Set<T> first, Set<T> second) {
        Set<T> all = new LinkedHashSet<>(first);
        all.addAll(second);
        return all;
    }
}
