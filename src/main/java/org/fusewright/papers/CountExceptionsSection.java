package org.fusewright.papers;

import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.Comparison.Found;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.Comparison.StandIn;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.words.Recall;

import java.util.List;

/** Substitutes that a person agreed to, and parts that do not belong in the bag. */
final class CountExceptionsSection {

    private static final List<Table.Column> SUBSTITUTES =
            List.of(
                    Table.Column.right("print.column.pieces", 12),
                    Table.Column.left("print.count.instead-of", 25),
                    Table.Column.left("print.count.stands-in", 25),
                    Table.Column.left("print.count.why", 60),
                    Table.Column.left("print.count.agreed-by", 24));

    private static final List<Table.Column> WRONG =
            List.of(
                    Table.Column.right("print.column.pieces", 12),
                    Table.Column.left("print.column.part", 30),
                    Table.Column.left("print.column.title", 100));

    private final Sheet sheet;
    private final CountRecord record;

    CountExceptionsSection(Sheet sheet, CountRecord record) {
        this.sheet = sheet;
        this.record = record;
    }

    void print() {
        Table substitutes =
                new Table(
                        sheet,
                        Headings.section(sheet, sheet.say("print.count.substitutes")),
                        SUBSTITUTES);
        for (LineResult line : record.comparison().lines()) {
            for (StandIn standIn : line.standIns()) {
                AgreedSubstitute agreed = standIn.agreed();
                substitutes.row(
                        Cell.of(Style.STRONG, sheet.figures().plain(standIn.pieces())),
                        Cell.of(Style.STRONG, agreed.wanted().value()),
                        Cell.of(Style.STRONG, agreed.offered().value()),
                        Cell.of(sheet.say(Recall.of(agreed.reason()))),
                        Cell.of(agreed.agreedBy()));
            }
        }
        Table wrong =
                new Table(
                        sheet,
                        Headings.section(sheet, sheet.say("print.count.wrong-parts")),
                        WRONG);
        for (Found found : record.comparison().unexpected()) {
            wrong.row(
                    Cell.of(Style.STRONG, sheet.figures().plain(found.quantity())),
                    Cell.of(Style.STRONG, found.part().value()),
                    Cell.of(record.titles().getOrDefault(found.part(), "")));
        }
    }
}
