package org.fusewright.papers;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;

import java.util.List;
import java.util.stream.Collectors;

/** What goes into the bag, group by group, with a box to tick for each line. */
final class PartsSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.right("print.column.quantity", 15),
                    Table.Column.left("print.column.part", 25),
                    Table.Column.left("print.column.title", 42),
                    Table.Column.left("print.column.goes-to", 52));

    private final Sheet sheet;
    private final Kit kit;

    PartsSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        String section = sheet.say("print.parts.title");
        if (kit.parts().isEmpty()) {
            Headings.drawSection(sheet, section, Style.BODY.leading());
            sheet.paragraph(Style.BODY, sheet.say("print.parts.none"));
            return;
        }
        Table table = new Table(sheet, Headings.section(sheet, section), COLUMNS);
        for (PartGroup group : PartGroup.values()) {
            List<PartLine> lines =
                    kit.parts().stream().filter(line -> line.group() == group).toList();
            if (!lines.isEmpty()) {
                table.group(Headings.group(sheet, sheet.say("print.part-group." + group.code())));
                lines.forEach(line -> addRow(table, line));
            }
        }
    }

    private void addRow(Table table, PartLine line) {
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, sheet.figures().quantity(line)),
                Cell.of(Style.STRONG, line.part().number().value()),
                Cell.of(line.part().title())
                        .plus(Style.SMALL, listed("print.parts.bag-holds", line.contains()))
                        .plus(Style.SMALL, listed("print.parts.left-over", line.surplus())),
                Cell.of(goesTo(line)));
    }

    private String goesTo(PartLine line) {
        String places = Places.compact(line.usedAt(), sheet.wording());
        return line.group() == PartGroup.SPARE
                ? sheet.say("print.parts.stands-in", places)
                : places;
    }

    private String listed(String key, List<BaggedSet.Content> contents) {
        return contents.isEmpty()
                ? ""
                : sheet.say(
                        key,
                        contents.stream()
                                .map(PartsSection::joined)
                                .collect(Collectors.joining(", ")));
    }

    private static String joined(BaggedSet.Content content) {
        return content.quantity()
                + ("" + PaperFont.NO_BREAK_SPACE + '×' + PaperFont.NO_BREAK_SPACE)
                + content.part();
    }
}
