package org.fusewright.papers;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;

import java.util.Comparator;
import java.util.List;

/** Every check that is not a pass, fails first: what it found, against which limit, what to do. */
final class ChecksSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("Verdict", 13),
                    Table.Column.left("Check and subject", 30),
                    Table.Column.right("Value", 12),
                    Table.Column.right("Limit", 12),
                    Table.Column.left("What it means; basis", 62));

    private final Sheet sheet;
    private final Kit kit;

    ChecksSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        String title = "Checks that did not pass";
        List<Check> open =
                kit.checks().stream()
                        .filter(check -> check.verdict() != Verdict.PASS)
                        .sorted(Comparator.comparing(Check::verdict).reversed())
                        .toList();
        if (open.isEmpty()) {
            Headings.drawSection(sheet, title, Style.BODY.leading());
            sheet.paragraph(Style.BODY, passed());
            return;
        }
        Table table = new Table(sheet, Headings.section(sheet, title), COLUMNS);
        for (Check check : open) {
            table.row(
                    Cell.of(Style.STRONG, sign(check.verdict()) + " " + check.verdict().code()),
                    Cell.of(Style.STRONG, check.code().code())
                            .plus(Style.BODY, check.subject().text().english()),
                    Cell.of(withUnit(Figures.of(check.value(), check.limit()), check)),
                    Cell.of(withUnit(Figures.of(check.limit()), check)),
                    Cell.of(check.says().english())
                            .plus(Style.SMALL, "Basis: " + check.basis().text().english()));
        }
    }

    private String passed() {
        return kit.checks().isEmpty()
                ? "Nothing was checked."
                : "None: all " + kit.checks().size() + " checks pass.";
    }

    private static String withUnit(String figure, Check check) {
        return check.unit().isEmpty() ? figure : figure + " " + check.unit();
    }

    private static String sign(Verdict verdict) {
        return switch (verdict) {
            case PASS -> "✔";
            case CAUTION -> "⚠";
            case FAIL -> "✘";
        };
    }
}
