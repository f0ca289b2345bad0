package org.fusewright.papers;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;

import java.util.Comparator;
import java.util.List;

/** Every check that is not a pass, fails first: what it found, against which limit, what to do. */
final class ChecksSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("print.checks.verdict", 13)
                            .holding(Style.STRONG, "print.verdict.caution", "print.verdict.fail"),
                    Table.Column.left("print.checks.subject", 30),
                    Table.Column.right("print.checks.value", 12),
                    Table.Column.right("print.checks.limit", 12),
                    Table.Column.left("print.checks.meaning", 62));

    private final Sheet sheet;
    private final Kit kit;

    ChecksSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        String title = sheet.say("print.checks.title");
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
                    Cell.of(Style.STRONG, sheet.say("print.verdict." + check.verdict().code())),
                    Cell.of(Style.STRONG, check.code().code())
                            .plus(Style.BODY, sheet.say(check.subject().text())),
                    Cell.of(value(check)),
                    Cell.of(limit(check)),
                    Cell.of(sheet.say(check.says()))
                            .plus(Style.SMALL, sheet.say("why.basis", check.basis().text())));
        }
    }

    private String passed() {
        return kit.checks().isEmpty()
                ? sheet.say("print.checks.nothing")
                : sheet.say("print.checks.all-pass", kit.checks().size());
    }

    private String value(Check check) {
        Unit unit = unit(check);
        UnitSystem units = sheet.wording().units();
        return withUnit(
                sheet.figures()
                        .of(unit.shown(check.value(), units), unit.shown(check.limit(), units)),
                check);
    }

    private String limit(Check check) {
        return withUnit(sheet.figures().of(check.limit(), unit(check)), check);
    }

    private String withUnit(String figure, Check check) {
        Unit unit = unit(check);
        String sign = unit == Unit.NONE ? check.unit() : unit.sign(sheet.wording().units());
        return sign.isEmpty() ? figure : figure + " " + sign;
    }

    /** None for a unit that is alike for all readers. */
    private static Unit unit(Check check) {
        return Unit.find(check.unit()).orElse(Unit.NONE);
    }
}
