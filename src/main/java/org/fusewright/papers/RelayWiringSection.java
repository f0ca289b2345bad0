package org.fusewright.papers;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.sizing.CavityRole;

import java.util.List;

/** Each relay by its terminals (DIN 72552): which cavity, which lead. */
final class RelayWiringSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("", 4),
                    Table.Column.left("Terminal", 16),
                    Table.Column.left("Does", 42),
                    Table.Column.left("Cavity", 18),
                    Table.Column.left("Lead", 44),
                    Table.Column.left("Wire", 50));

    private final Sheet sheet;
    private final Kit kit;

    RelayWiringSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        Table table =
                new Table(
                        sheet, Headings.section(sheet, "Relays, terminals by DIN 72552"), COLUMNS);
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
                        "%s in %s-%d and %d, for %s"
                                .formatted(
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

    private static void addRow(Table table, Cavity cavity, Cavity.Occupant occupant) {
        WireColour colour = occupant.lead().wire().colour();
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, occupant.role().code()),
                Cell.of(does(occupant.role())),
                Cell.of(Style.STRONG, cavity.id()),
                Cell.of(occupant.lead().id()),
                Cell.of(
                        Figures.size(occupant.lead().wire().size())
                                + " "
                                + colour
                                + " "
                                + colour.inWords()));
    }

    private static String does(CavityRole role) {
        return switch (role) {
            case RELAY_30 -> "contact, from its device";
            case RELAY_87 -> "contact, to the load";
            case RELAY_86 -> "coil, from the trigger";
            case RELAY_85 -> "coil, to ground";
            case FEED, LOAD -> "";
        };
    }
}
