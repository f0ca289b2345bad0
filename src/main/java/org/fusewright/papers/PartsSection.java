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
                    Table.Column.left("", 4),
                    Table.Column.right("Quantity", 15),
                    Table.Column.left("Part", 25),
                    Table.Column.left("Title", 42),
                    Table.Column.left("Goes to", 52));

    private final Sheet sheet;
    private final Kit kit;

    PartsSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        String section = "Parts";
        if (kit.parts().isEmpty()) {
            Headings.drawSection(sheet, section, Style.BODY.leading());
            sheet.paragraph(Style.BODY, "No parts.");
            return;
        }
        Table table = new Table(sheet, Headings.section(sheet, section), COLUMNS);
        for (PartGroup group : PartGroup.values()) {
            List<PartLine> lines =
                    kit.parts().stream().filter(line -> line.group() == group).toList();
            if (!lines.isEmpty()) {
                table.group(Headings.group(sheet, title(group)));
                lines.forEach(line -> addRow(table, line));
            }
        }
    }

    private static void addRow(Table table, PartLine line) {
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, Figures.quantity(line)),
                Cell.of(Style.STRONG, line.part().number().value()),
                Cell.of(line.part().title())
                        .plus(Style.SMALL, listed("One bag holds: ", line.contains()))
                        .plus(Style.SMALL, listed("Left over: ", line.surplus())),
                Cell.of(goesTo(line)));
    }

    private static String goesTo(PartLine line) {
        String places = Places.compact(line.usedAt());
        return line.group() == PartGroup.SPARE ? "stands in for " + places : places;
    }

    private static String listed(String before, List<BaggedSet.Content> contents) {
        return contents.isEmpty()
                ? ""
                : contents.stream()
                        .map(content -> joined(content))
                        .collect(Collectors.joining(", ", before, ""));
    }

    private static String joined(BaggedSet.Content content) {
        return content.quantity()
                + ("" + PaperFont.NO_BREAK_SPACE + '×' + PaperFont.NO_BREAK_SPACE)
                + content.part();
    }

    private static String title(PartGroup group) {
        return switch (group) {
            case SET -> "Bagged sets";
            case BLOCK -> "Blocks";
            case CAP -> "Caps";
            case WEDGE -> "Locking wedges";
            case TERMINAL -> "Terminals";
            case SEAL -> "Seals";
            case PLUG -> "Plugs";
            case DEVICE -> "Devices";
            case RELAY -> "Relays";
            case SPLICE -> "Splices";
            case WIRE -> "Wire";
            case HOLDER -> "Holders";
            case SPARE -> "Spares, in a bag of their own";
        };
    }
}
