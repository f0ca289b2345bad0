package org.fusewright.papers;

import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteLine;

import java.util.List;
import java.util.Optional;

/** What a revision changes against the one that went out before. */
final class QuoteChangesSection {
    private static final List<Table.Column> FACTS =
            List.of(
                    Table.Column.left("", 42),
                    Table.Column.left("Before", 48),
                    Table.Column.left("Now", 48));
    private static final List<Table.Column> LINES =
            List.of(
                    Table.Column.left("Code", 26),
                    Table.Column.left("Title", 42),
                    Table.Column.right("Before", 34),
                    Table.Column.right("Now", 34));

    private final Sheet sheet;
    private final QuoteChanges changes;

    QuoteChangesSection(Sheet sheet, QuoteChanges changes) {
        this.sheet = sheet;
        this.changes = changes;
    }

    void print() {
        String heading = "Changed since revision " + changes.sinceRevision();
        if (changes.isNothing()) {
            Headings.drawSection(sheet, heading, Style.BODY.leading());
            sheet.paragraph(Style.BODY, "Nothing.");
            return;
        }
        Table facts = new Table(sheet, Headings.section(sheet, heading), FACTS);
        changes.facts()
                .forEach(
                        fact ->
                                facts.row(
                                        Cell.of(fact.what().english()),
                                        Cell.of(orDash(fact.before().english())),
                                        Cell.of(orDash(fact.after().english()))));
        if (changes.lines().isEmpty()) {
            return;
        }
        Table lines =
                new Table(
                        sheet,
                        Headings.section(sheet, "Lines changed: quantity, unit price, price"),
                        LINES);
        Optional<String> variant = Optional.empty();
        for (QuoteChanges.Line line : changes.lines()) {
            String title = line.variant().title().english();
            if (!variant.equals(Optional.of(title))) {
                lines.group(Headings.group(sheet, title));
                variant = Optional.of(title);
            }
            lines.row(
                    Cell.of(Style.STRONG, line.any().code()),
                    Cell.of(line.any().title()),
                    figures(line.before()),
                    figures(line.after()));
        }
    }

    private static Cell figures(Optional<QuoteLine> line) {
        return line.map(
                        one ->
                                Cell.of(Amounts.of(one.price()))
                                        .plus(
                                                Style.SMALL,
                                                Amounts.quantity(one)
                                                        + " at "
                                                        + Amounts.unitPrice(one)))
                .orElse(Cell.of("–"));
    }

    private static String orDash(String text) {
        return text.isEmpty() ? "–" : text;
    }
}
