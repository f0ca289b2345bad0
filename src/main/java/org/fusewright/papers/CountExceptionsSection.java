package org.fusewright.papers;

import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.Comparison.Found;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.Comparison.StandIn;
import org.fusewright.core.count.CountRecord;

import java.util.List;

/** Substitutes that a person agreed to, and parts that do not belong in the bag. */
final class CountExceptionsSection {

    private static final List<Table.Column> SUBSTITUTES =
            List.of(
                    Table.Column.right("Pieces", 12),
                    Table.Column.left("Instead of", 25),
                    Table.Column.left("Stands in", 25),
                    Table.Column.left("Why it may", 60),
                    Table.Column.left("Agreed by", 24));

    private static final List<Table.Column> WRONG =
            List.of(
                    Table.Column.right("Pieces", 12),
                    Table.Column.left("Part", 30),
                    Table.Column.left("Title", 100));

    private final Sheet sheet;
    private final CountRecord record;

    CountExceptionsSection(Sheet sheet, CountRecord record) {
        this.sheet = sheet;
        this.record = record;
    }

    void print() {
        Table substitutes =
                new Table(sheet, Headings.section(sheet, "Agreed substitutes"), SUBSTITUTES);
        for (LineResult line : record.comparison().lines()) {
            for (StandIn standIn : line.standIns()) {
                AgreedSubstitute agreed = standIn.agreed();
                substitutes.row(
                        Cell.of(Style.STRONG, standIn.pieces().toPlainString()),
                        Cell.of(Style.STRONG, agreed.wanted().value()),
                        Cell.of(Style.STRONG, agreed.offered().value()),
                        Cell.of(agreed.reason()),
                        Cell.of(agreed.agreedBy()));
            }
        }
        Table wrong =
                new Table(sheet, Headings.section(sheet, "Does not belong in this bag"), WRONG);
        for (Found found : record.comparison().unexpected()) {
            wrong.row(
                    Cell.of(Style.STRONG, found.quantity().toPlainString()),
                    Cell.of(Style.STRONG, found.part().value()),
                    Cell.of(record.titles().getOrDefault(found.part(), "")));
        }
    }
}
