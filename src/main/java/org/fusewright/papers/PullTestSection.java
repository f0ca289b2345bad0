package org.fusewright.papers;

import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.quantity.WireSize;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** What a sample crimp of each size must hold, with room for what it held. */
final class PullTestSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("", 4),
                    Table.Column.left("Size", 22),
                    Table.Column.left("Terminal", 34),
                    Table.Column.right("Holds at least", 24),
                    Table.Column.left("By", 46),
                    Table.Column.left("Held", 28));

    private static final String IN_PLACE =
            "A crimp that stays in the kit is pulled to no more than 80 % of that force"
                    + " (NASA-STD-8739.4). Samples go into the bin.";

    private final Sheet sheet;
    private final Map<WireSize, TreeSet<String>> terminals = new TreeMap<>();

    PullTestSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        kit.blocks().stream()
                .flatMap(block -> block.cavities().stream())
                .flatMap(cavity -> cavity.occupant().stream())
                .forEach(
                        occupant ->
                                occupant.terminal()
                                        .ifPresent(
                                                terminal ->
                                                        add(
                                                                occupant.lead().wire().size(),
                                                                terminal)));
    }

    private void add(WireSize size, Terminal terminal) {
        terminals.computeIfAbsent(size, absent -> new TreeSet<>()).add(terminal.number().value());
    }

    void print() {
        if (terminals.isEmpty()) {
            return;
        }
        Table table = new Table(sheet, Headings.section(sheet, "Pull test"), COLUMNS);
        terminals.forEach(
                (size, numbers) -> numbers.forEach(number -> addRow(table, size, number)));
        sheet.down(3);
        sheet.paragraph(Style.SMALL, IN_PLACE);
    }

    private static void addRow(Table table, WireSize size, String terminal) {
        Optional<PullTest> test = PullTest.find(size);
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, Figures.size(size)),
                Cell.of(terminal),
                Cell.of(
                        Style.STRONG,
                        test.map(found -> Figures.of(found.leastN()) + " N").orElse("–")),
                Cell.of(test.map(PullTest::source).orElse("no published force: maker's data")),
                Cell.of("__________ N"));
    }
}
