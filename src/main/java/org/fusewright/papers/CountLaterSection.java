package org.fusewright.papers;

import org.fusewright.core.count.BagDifference.Entry;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.words.Unit;

import java.util.List;
import java.util.stream.Collectors;

/** What to send after a bag whose job has moved on. */
final class CountLaterSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.right("print.column.quantity", 18),
                    Table.Column.left("print.column.part", 28),
                    Table.Column.left("print.column.title", 55),
                    Table.Column.left("print.count.cut-to", 40));

    private final Sheet sheet;
    private final CountRecord record;

    CountLaterSection(Sheet sheet, CountRecord record) {
        this.sheet = sheet;
        this.record = record;
    }

    void print() {
        record.later()
                .ifPresent(
                        later ->
                                later.difference()
                                        .ifPresent(
                                                difference -> {
                                                    int revision = later.revision();
                                                    print(
                                                            sheet.say(
                                                                    "print.count.to-add", revision),
                                                            difference.toAdd());
                                                    print(
                                                            sheet.say(
                                                                    "print.count.to-take-back",
                                                                    revision),
                                                            difference.toTakeBack());
                                                }));
    }

    private void print(String heading, List<Entry> entries) {
        Table table = new Table(sheet, Headings.section(sheet, heading), COLUMNS);
        for (Entry entry : entries) {
            table.row(
                    Cell.of(
                            Style.STRONG,
                            CountLinesSection.quantity(sheet, entry.quantity(), entry.unit())),
                    Cell.of(Style.STRONG, entry.part().value()),
                    Cell.of(entry.title()),
                    Cell.of(
                            entry.cutsMm().stream()
                                    .map(this::cut)
                                    .collect(Collectors.joining(", "))));
        }
    }

    private String cut(long cutMm) {
        Figures figures = sheet.figures();
        return figures.whole(cutMm, Unit.MILLIMETRE)
                + PaperFont.NO_BREAK_SPACE
                + figures.sign(Unit.MILLIMETRE);
    }
}
