package org.fusewright.papers;

import org.fusewright.core.quote.LineKind;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteLine;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Recall;

import java.util.List;

/** One variant line by line, with its sums, and what its checks warn of. */
final class QuoteLinesSection {
    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.right("print.column.quantity", 17),
                    Table.Column.left("quotes.code", 26),
                    Table.Column.left("print.column.title", 58),
                    Table.Column.right("orders.unit-price", 22),
                    Table.Column.right("orders.price", 18));

    private final Sheet sheet;
    private final Quote quote;
    private final Variant variant;
    private final Amounts amounts;

    QuoteLinesSection(Sheet sheet, Quote quote, Variant variant) {
        this.sheet = sheet;
        this.quote = quote;
        this.variant = variant;
        amounts = new Amounts(sheet);
    }

    void print() {
        String title =
                sheet.say(
                        Phrase.counted(
                                "print.quote.lines-for", quote.kits(), variant.kind().title()));
        Table table = new Table(sheet, Headings.section(sheet, title), COLUMNS);
        for (LineKind kind : LineKind.values()) {
            List<QuoteLine> lines =
                    variant.lines().stream().filter(line -> line.kind() == kind).toList();
            if (!lines.isEmpty()) {
                table.group(Headings.group(sheet, sheet.say("quote-lines." + kind.code())));
                lines.forEach(line -> addRow(table, line));
            }
        }
        table.group(
                Headings.group(sheet, sheet.say("print.quote.sum-in", quote.currency().getCode())));
        addSum(table, sheet.say("quotes.before-tax"), amounts.of(variant.net()), Style.BODY);
        addSum(
                table,
                sheet.say("quotes.tax", quote.tax().percent()),
                amounts.of(variant.tax()),
                Style.BODY);
        addSum(table, sheet.say("print.quote.total"), amounts.of(variant.total()), Style.STRONG);
        printWarnings();
    }

    private void printWarnings() {
        if (variant.warnings().isEmpty()) {
            return;
        }
        Table.Heading heading = Headings.group(sheet, sheet.say("print.quote.warnings"));
        sheet.keep(heading.height() + 2 * Style.SMALL.leading());
        heading.draw(false);
        variant.warnings()
                .forEach(warning -> sheet.paragraph(Style.SMALL, sheet.say(Recall.of(warning))));
    }

    private void addRow(Table table, QuoteLine line) {
        table.row(
                Cell.of(amounts.quantity(line)),
                Cell.of(Style.STRONG, line.code()),
                Cell.of(line.title())
                        .plus(Style.SMALL, sheet.say(Recall.of(line.detail(), "quote.detail."))),
                Cell.of(amounts.unitPrice(line)),
                Cell.of(amounts.of(line.price())));
    }

    private static void addSum(Table table, String label, String amount, Lettering lettering) {
        table.row(
                Cell.of(""),
                Cell.of(""),
                Cell.of(lettering, label),
                Cell.of(""),
                Cell.of(lettering, amount));
    }
}
