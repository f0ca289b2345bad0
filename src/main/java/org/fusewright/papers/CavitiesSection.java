package org.fusewright.papers;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;

import java.util.List;
import java.util.Optional;

/** Each cavity with its lead, terminal and seal, or its plug, and a box to tick once it is home. */
final class CavitiesSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.column.cavity", 16),
                    Table.Column.left("print.column.does", 14)
                            .holding(Style.BODY, CavityRoles.TEXTS),
                    Table.Column.left("print.column.lead", 42),
                    Table.Column.left("print.column.wire", 26),
                    Table.Column.left("print.column.terminal", 28),
                    Table.Column.left("print.column.seal-or-plug", 28));

    private final Sheet sheet;
    private final Kit kit;

    CavitiesSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        if (kit.blocks().isEmpty()) {
            return;
        }
        Table table =
                new Table(
                        sheet, Headings.section(sheet, sheet.say("print.cavities.title")), COLUMNS);
        for (KitBlock block : kit.blocks()) {
            String title = sheet.say("print.cavities.block", block.id(), block.location());
            table.group(Headings.group(sheet, title));
            block.cavities().forEach(cavity -> addRow(table, cavity));
        }
    }

    private void addRow(Table table, Cavity cavity) {
        Cell id = Cell.of(Style.STRONG, cavity.id());
        cavity.occupant()
                .ifPresentOrElse(
                        occupant ->
                                table.row(
                                        Cell.TICK_BOX,
                                        id,
                                        Cell.of(CavityRoles.said(occupant.role(), sheet)),
                                        Cell.of(occupant.lead().id()),
                                        Cell.of(wire(occupant.lead().wire())),
                                        Cell.of(number(occupant.terminal())),
                                        Cell.of(number(occupant.seal()))),
                        () ->
                                table.row(
                                        Cell.TICK_BOX,
                                        id,
                                        Cell.of(sheet.say("drawing.empty")),
                                        Cell.of(""),
                                        Cell.of(""),
                                        Cell.of(""),
                                        Cell.of(number(cavity.plug()))));
    }

    private String wire(Wire wire) {
        return wire.colour() + " " + sheet.figures().size(wire.size());
    }

    private String number(Optional<? extends Part> part) {
        return part.map(found -> found.number().value())
                .orElseGet(() -> sheet.say("print.part.none"));
    }
}
