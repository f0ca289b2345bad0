package org.fusewright.papers;

import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.Comparison.StandIn;
import org.fusewright.core.count.ExpectedLine;

import java.math.BigDecimal;
import java.util.List;

/** Every line of the bag: what it should hold and what was found. */
final class CountLinesSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("", 4),
                    Table.Column.right("Should be", 14),
                    Table.Column.right("Found", 19),
                    Table.Column.left("Part", 25),
                    Table.Column.left("Title", 42),
                    Table.Column.left("Goes to", 42));

    private final Sheet sheet;
    private final Comparison comparison;

    CountLinesSection(Sheet sheet, Comparison comparison) {
        this.sheet = sheet;
        this.comparison = comparison;
    }

    void print() {
        Table table = new Table(sheet, Headings.section(sheet, "What the bag holds"), COLUMNS);
        comparison.lines().forEach(line -> addRow(table, line));
    }

    private static void addRow(Table table, LineResult result) {
        ExpectedLine line = result.line();
        Cell title = Cell.of(line.title());
        for (StandIn standIn : result.standIns()) {
            title =
                    title.plus(
                            Style.SMALL,
                            "with %s of %s in its place, agreed by %s"
                                    .formatted(
                                            standIn.pieces().toPlainString(),
                                            standIn.agreed().offered(),
                                            standIn.agreed().agreedBy()));
        }
        if (result.lent().signum() > 0) {
            title =
                    title.plus(
                            Style.SMALL,
                            result.lent().toPlainString() + " of them in place of another part");
        }
        table.row(
                Cell.of(Style.STRONG, mark(result)),
                Cell.of(quantity(line.quantity(), line.unit())),
                Cell.of(Style.STRONG, result.counted().toPlainString())
                        .plus(Style.SMALL_STRONG, off(result)),
                Cell.of(Style.STRONG, line.part().value()),
                title,
                Cell.of(Places.compact(line.places())));
    }

    private static String mark(LineResult result) {
        return switch (result.state()) {
            case COMPLETE -> "✔";
            case SHORT, OVER -> "✘";
        };
    }

    private static String off(LineResult result) {
        BigDecimal off = result.difference().abs();
        return switch (result.state()) {
            case COMPLETE -> "";
            case SHORT -> off.toPlainString() + " short";
            case OVER -> off.toPlainString() + " too many";
        };
    }

    static String quantity(BigDecimal quantity, String unit) {
        String number = quantity.stripTrailingZeros().toPlainString();
        return unit.equals(ExpectedLine.EACH)
                ? number
                : number
                        + PaperFont.NO_BREAK_SPACE
                        + (number.equals("1") ? unit.replace("leads", "lead") : unit);
    }
}
