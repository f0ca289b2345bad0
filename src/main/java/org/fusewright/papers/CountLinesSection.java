package org.fusewright.papers;

import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.Comparison.StandIn;
import org.fusewright.core.count.ExpectedLine;
import org.fusewright.core.words.Phrase;

import java.math.BigDecimal;
import java.util.List;

/** Every line of the bag: what it should hold and what was found. */
final class CountLinesSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.right("print.count.should-be", 14),
                    Table.Column.right("print.count.found", 19),
                    Table.Column.left("print.column.part", 25),
                    Table.Column.left("print.column.title", 42),
                    Table.Column.left("print.column.goes-to", 42));

    private final Sheet sheet;
    private final Comparison comparison;

    CountLinesSection(Sheet sheet, Comparison comparison) {
        this.sheet = sheet;
        this.comparison = comparison;
    }

    void print() {
        Table table =
                new Table(sheet, Headings.section(sheet, sheet.say("print.count.lines")), COLUMNS);
        comparison.lines().forEach(line -> addRow(table, line));
    }

    private void addRow(Table table, LineResult result) {
        ExpectedLine line = result.line();
        Cell title = Cell.of(line.title());
        for (StandIn standIn : result.standIns()) {
            title =
                    title.plus(
                            Style.SMALL,
                            sheet.say(
                                    "print.count.with-in-place",
                                    standIn.pieces(),
                                    standIn.agreed().offered(),
                                    standIn.agreed().agreedBy()));
        }
        if (result.lent().signum() > 0) {
            title = title.plus(Style.SMALL, sheet.say("counts.lent", result.lent()));
        }
        table.row(
                Cell.of(Style.STRONG, mark(result)),
                Cell.of(quantity(sheet, line.quantity(), line.unit())),
                Cell.of(Style.STRONG, sheet.figures().plain(result.counted()))
                        .plus(Style.SMALL_STRONG, off(result)),
                Cell.of(Style.STRONG, line.part().value()),
                title,
                Cell.of(Places.compact(line.places(), sheet.wording())));
    }

    private static String mark(LineResult result) {
        return switch (result.state()) {
            case COMPLETE -> "✔";
            case SHORT, OVER -> "✘";
        };
    }

    private String off(LineResult result) {
        BigDecimal off = result.difference().abs();
        return switch (result.state()) {
            case COMPLETE -> "";
            case SHORT -> sheet.say("counts.state.short", off);
            case OVER -> sheet.say("print.count.too-many", off);
        };
    }

    static String quantity(Sheet sheet, BigDecimal quantity, String unit) {
        BigDecimal plain = quantity.stripTrailingZeros();
        String number = sheet.figures().plain(plain);
        return switch (unit) {
            case ExpectedLine.EACH -> number;
            case ExpectedLine.LEADS ->
                    sheet.say(Phrase.counted("print.count.leads", plain.longValueExact()));
            default -> number + PaperFont.NO_BREAK_SPACE + unit;
        };
    }
}
