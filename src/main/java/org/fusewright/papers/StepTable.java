package org.fusewright.papers;

import java.util.List;

/** Things to do in their order, each with a box to tick. */
final class StepTable {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.steps.step", 30),
                    Table.Column.left("print.steps.how", 125));

    private final Sheet sheet;
    private final String names;
    private final String instructions;
    private final Table table;
    private int step;

    /**
     * @param section text of the bundle for the heading
     * @param names what the names of the steps' texts begin with
     * @param instructions likewise of what is to be done in each
     */
    StepTable(Sheet sheet, String section, String names, String instructions) {
        this.sheet = sheet;
        this.names = names;
        this.instructions = instructions;
        table = new Table(sheet, Headings.section(sheet, sheet.say(section)), COLUMNS);
    }

    StepTable step(String code) {
        step++;
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, step + " " + sheet.say(names + code)),
                Cell.of(sheet.say(instructions + code)));
        return this;
    }
}
