package org.fusewright.papers;

import java.util.List;

/** Things to do in their order, each with a box to tick. */
final class StepTable {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("", 4),
                    Table.Column.left("Step", 30),
                    Table.Column.left("How, and how to know", 125));

    private final Table table;
    private int step;

    StepTable(Sheet sheet, String section) {
        table = new Table(sheet, Headings.section(sheet, section), COLUMNS);
    }

    StepTable step(String name, String how) {
        step++;
        table.row(Cell.TICK_BOX, Cell.of(Style.STRONG, step + " " + name), Cell.of(how));
        return this;
    }
}
