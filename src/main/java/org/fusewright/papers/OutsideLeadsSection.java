package org.fusewright.papers;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitLead;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The leads that end in no cavity: between source, main device, splices, loads and ground. */
final class OutsideLeadsSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.column.lead", 42),
                    Table.Column.left("print.column.wire", 42),
                    Table.Column.left("print.column.from", 40),
                    Table.Column.left("print.column.to", 40));

    private final Sheet sheet;
    private final Kit kit;

    OutsideLeadsSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        Set<String> inCavities =
                kit.blocks().stream()
                        .flatMap(block -> block.cavities().stream())
                        .map(Cavity::id)
                        .collect(Collectors.toSet());
        Table table =
                new Table(
                        sheet, Headings.section(sheet, sheet.say("print.outside.title")), COLUMNS);
        kit.wire().stream()
                .flatMap(line -> line.leads().stream())
                .filter(
                        lead ->
                                !inCavities.contains(lead.from())
                                        && !inCavities.contains(lead.to()))
                .forEach(lead -> addRow(table, lead));
    }

    private void addRow(Table table, KitLead lead) {
        Wire wire = lead.lead().wire();
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, lead.lead().id()),
                Cell.of(Colours.sizeAndColour(wire, sheet)),
                Cell.of(Places.said(lead.from(), sheet.wording())),
                Cell.of(Places.said(lead.to(), sheet.wording())));
    }
}
