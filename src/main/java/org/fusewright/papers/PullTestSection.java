package org.fusewright.papers;

import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** What a sample crimp of each size must hold, with room for what it held. */
final class PullTestSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.pull-test.size", 22),
                    Table.Column.left("print.column.terminal", 34),
                    Table.Column.right("print.pull-test.least", 24),
                    Table.Column.left("print.pull-test.source", 46),
                    Table.Column.left("print.pull-test.held", 28));

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
        Table table =
                new Table(
                        sheet,
                        Headings.section(sheet, sheet.say("print.pull-test.title")),
                        COLUMNS);
        terminals.forEach(
                (size, numbers) -> numbers.forEach(number -> addRow(table, size, number)));
        sheet.down(3);
        sheet.paragraph(Style.SMALL, sheet.say("print.pull-test.in-place"));
    }

    private void addRow(Table table, WireSize size, String terminal) {
        Figures figures = sheet.figures();
        Optional<PullTest> test = PullTest.find(size);
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, figures.size(size)),
                Cell.of(terminal),
                Cell.of(
                        Style.STRONG,
                        test.map(found -> figures.measure(found.leastN(), Unit.NEWTON))
                                .orElse("–")),
                Cell.of(
                        sheet.say(
                                test.map(PullTest::source)
                                        .orElse(Phrase.of("print.pull-test.no-force")))),
                Cell.of("__________ " + figures.sign(Unit.NEWTON)));
    }
}
