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
                    Table.Column.left("", 4),
                    Table.Column.left("Cavity", 16),
                    Table.Column.left("Does", 14),
                    Table.Column.left("Lead", 42),
                    Table.Column.left("Wire", 26),
                    Table.Column.left("Terminal", 28),
                    Table.Column.left("Seal or plug", 28));

    private static final String NONE = "none";

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
        Table table = new Table(sheet, Headings.section(sheet, "Loading the cavities"), COLUMNS);
        for (KitBlock block : kit.blocks()) {
            String title = block.id() + " · " + block.location() + " · wedge last";
            table.group(Headings.group(sheet, title));
            block.cavities().forEach(cavity -> addRow(table, cavity));
        }
    }

    private static void addRow(Table table, Cavity cavity) {
        Cell id = Cell.of(Style.STRONG, cavity.id());
        cavity.occupant()
                .ifPresentOrElse(
                        occupant ->
                                table.row(
                                        Cell.TICK_BOX,
                                        id,
                                        Cell.of(occupant.role().code()),
                                        Cell.of(occupant.lead().id()),
                                        Cell.of(wire(occupant.lead().wire())),
                                        Cell.of(number(occupant.terminal())),
                                        Cell.of(number(occupant.seal()))),
                        () ->
                                table.row(
                                        Cell.TICK_BOX,
                                        id,
                                        Cell.of("empty"),
                                        Cell.of(""),
                                        Cell.of(""),
                                        Cell.of(""),
                                        Cell.of(number(cavity.plug()))));
    }

    private static String wire(Wire wire) {
        return wire.colour() + " " + Figures.size(wire.size());
    }

    private static String number(Optional<? extends Part> part) {
        return part.map(found -> found.number().value()).orElse(NONE);
    }
}
