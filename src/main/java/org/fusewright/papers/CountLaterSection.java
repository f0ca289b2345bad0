package org.fusewright.papers;

import org.fusewright.core.count.BagDifference.Entry;
import org.fusewright.core.count.CountRecord;

import java.util.List;
import java.util.stream.Collectors;

/** What to send after a bag whose job has moved on. */
final class CountLaterSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.right("Quantity", 18),
                    Table.Column.left("Part", 28),
                    Table.Column.left("Title", 55),
                    Table.Column.left("Cut to", 40));

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
                                                    String to = " for revision " + later.revision();
                                                    print("To add" + to, difference.toAdd());
                                                    print(
                                                            "To take back" + to,
                                                            difference.toTakeBack());
                                                }));
    }

    private void print(String heading, List<Entry> entries) {
        Table table = new Table(sheet, Headings.section(sheet, heading), COLUMNS);
        for (Entry entry : entries) {
            table.row(
                    Cell.of(
                            Style.STRONG,
                            CountLinesSection.quantity(entry.quantity(), entry.unit())),
                    Cell.of(Style.STRONG, entry.part().value()),
                    Cell.of(entry.title()),
                    Cell.of(
                            entry.cutsMm().stream()
                                    .map(cut -> "" + cut + PaperFont.NO_BREAK_SPACE + "mm")
                                    .collect(Collectors.joining(", "))));
        }
    }
}
