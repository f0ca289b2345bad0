package org.fusewright.papers;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.sizing.CavityRole;

import java.util.List;

/** Each relay by its terminals (DIN 72552): which cavity, which lead. */
final class RelayWiringSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.relays.terminal", 16),
                    Table.Column.left("print.column.does", 42),
                    Table.Column.left("print.column.cavity", 18),
                    Table.Column.left("print.column.lead", 44),
                    Table.Column.left("print.column.wire", 50));

    private final Sheet sheet;
    private final Kit kit;

    RelayWiringSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        Table table =
                new Table(sheet, Headings.section(sheet, sheet.say("print.relays.title")), COLUMNS);
        for (KitBlock block : kit.blocks()) {
            for (KitBlock.Seat seat : block.seats()) {
                if (seat.part() instanceof Relay relay) {
                    addRelay(table, block, seat, relay);
                }
            }
        }
    }

    private void addRelay(Table table, KitBlock block, KitBlock.Seat seat, Relay relay) {
        table.group(
                Headings.group(
                        sheet,
                        sheet.say(
                                "print.relays.relay",
                                relay.number(),
                                block.id(),
                                seat.positions().getFirst(),
                                seat.positions().getLast(),
                                seat.circuit())));
        block.cavities().stream()
                .filter(cavity -> seat.positions().contains(cavity.position()))
                .forEach(
                        cavity ->
                                cavity.occupant()
                                        .ifPresent(occupant -> addRow(table, cavity, occupant)));
    }

    private void addRow(Table table, Cavity cavity, Cavity.Occupant occupant) {
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, occupant.role().code()),
                Cell.of(does(occupant.role())),
                Cell.of(Style.STRONG, cavity.id()),
                Cell.of(occupant.lead().id()),
                Cell.of(Colours.sizeAndColour(occupant.lead().wire(), sheet)));
    }

    private String does(CavityRole role) {
        return switch (role) {
            case RELAY_30 -> sheet.say("print.relays.30");
            case RELAY_87 -> sheet.say("print.relays.87");
            case RELAY_86 -> sheet.say("print.relays.86");
            case RELAY_85 -> sheet.say("print.relays.85");
            case FEED, LOAD -> "";
        };
    }
}
