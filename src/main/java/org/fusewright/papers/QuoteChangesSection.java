package org.fusewright.papers;

import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteLine;

import java.util.List;
import java.util.Optional;

/** What a revision changes against the one that went out before. */
final class QuoteChangesSection {
    private static final List<Table.Column> FACTS =
            List.of(
                    Table.Column.unnamed(42),
                    Table.Column.left("quotes.before", 48),
                    Table.Column.left("quotes.now", 48));
    private static final List<Table.Column> LINES =
            List.of(
                    Table.Column.left("quotes.code", 26),
                    Table.Column.left("print.column.title", 42),
                    Table.Column.right("quotes.before", 34),
                    Table.Column.right("quotes.now", 34));

    private final Sheet sheet;
    private final QuoteChanges changes;
    private final Amounts amounts;

    QuoteChangesSection(Sheet sheet, QuoteChanges changes) {
        this.sheet = sheet;
        this.changes = changes;
        amounts = new Amounts(sheet);
    }

    void print() {
        String heading = sheet.say("quotes.changed-since", changes.sinceRevision());
        if (changes.isNothing()) {
            Headings.drawSection(sheet, heading, Style.BODY.leading());
            sheet.paragraph(Style.BODY, sheet.say("quotes.nothing-changed"));
            return;
        }
        Table facts = new Table(sheet, Headings.section(sheet, heading), FACTS);
        changes.facts()
                .forEach(
                        fact ->
                                facts.row(
                                        Cell.of(sheet.say(fact.what())),
                                        Cell.of(orDash(sheet.say(fact.before()))),
                                        Cell.of(orDash(sheet.say(fact.after())))));
        if (changes.lines().isEmpty()) {
            return;
        }
        Table lines =
                new Table(
                        sheet,
                        Headings.section(sheet, sheet.say("print.quote.lines-changed")),
                        LINES);
        Optional<String> variant = Optional.empty();
        for (QuoteChanges.Line line : changes.lines()) {
            String title = sheet.say(line.variant().title());
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

    private Cell figures(Optional<QuoteLine> line) {
        return line.map(
                        one ->
                                Cell.of(amounts.of(one.price()))
                                        .plus(
                                                Style.SMALL,
                                                sheet.say(
                                                        "quotes.quantity-at",
                                                        amounts.quantity(one),
                                                        amounts.unitPrice(one))))
                .orElse(Cell.of("–"));
    }

    private static String orDash(String text) {
        return text.isEmpty() ? "–" : text;
    }
}
