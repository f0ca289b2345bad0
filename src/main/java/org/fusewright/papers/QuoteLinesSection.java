package org.fusewright.papers;

import org.fusewright.core.quote.LineKind;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteLine;
import org.fusewright.core.quote.Variant;

import java.util.List;

/** One variant line by line, with its sums, and what its checks warn of. */
final class QuoteLinesSection {
    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.right("Quantity", 17),
                    Table.Column.left("Code", 26),
                    Table.Column.left("Title", 58),
                    Table.Column.right("Unit price", 22),
                    Table.Column.right("Price", 18));

    private final Sheet sheet;
    private final Quote quote;
    private final Variant variant;

    QuoteLinesSection(Sheet sheet, Quote quote, Variant variant) {
        this.sheet = sheet;
        this.quote = quote;
        this.variant = variant;
    }

    void print() {
        String title = "%s: lines for %s".formatted(variant.kind().title().english(), kits());
        Table table = new Table(sheet, Headings.section(sheet, title), COLUMNS);
        for (LineKind kind : LineKind.values()) {
            List<QuoteLine> lines =
                    variant.lines().stream().filter(line -> line.kind() == kind).toList();
            if (!lines.isEmpty()) {
                table.group(Headings.group(sheet, title(kind)));
                lines.forEach(line -> addRow(table, line));
            }
        }
        table.group(Headings.group(sheet, "Sum in " + quote.currency().getCode()));
        addSum(table, "Before tax", Amounts.of(variant.net()), Style.BODY);
        addSum(
                table,
                "Tax " + quote.tax().percent().toPlainString() + " %",
                Amounts.of(variant.tax()),
                Style.BODY);
        addSum(table, "Total", Amounts.of(variant.total()), Style.STRONG);
        printWarnings();
    }

    private void printWarnings() {
        if (variant.warnings().isEmpty()) {
            return;
        }
        Table.Heading heading = Headings.group(sheet, "What its checks warn of");
        sheet.keep(heading.height() + 2 * Style.SMALL.leading());
        heading.draw(false);
        variant.warnings().forEach(warning -> sheet.paragraph(Style.SMALL, warning));
    }

    private String kits() {
        return quote.kits() == 1 ? "1 kit" : quote.kits() + " kits";
    }

    private static void addRow(Table table, QuoteLine line) {
        table.row(
                Cell.of(Amounts.quantity(line)),
                Cell.of(Style.STRONG, line.code()),
                Cell.of(line.title()).plus(Style.SMALL, line.detail()),
                Cell.of(Amounts.unitPrice(line)),
                Cell.of(Amounts.of(line.price())));
    }

    private static void addSum(Table table, String label, String amount, Lettering lettering) {
        table.row(
                Cell.of(""),
                Cell.of(""),
                Cell.of(lettering, label),
                Cell.of(""),
                Cell.of(lettering, amount));
    }

    private static String title(LineKind kind) {
        return switch (kind) {
            case PART -> "Parts";
            case LABOUR -> "Bench work";
            case SHIPPING -> "Shipping";
        };
    }
}
