package org.fusewright.papers;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.WireLine;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Each block cavity by cavity, in the order of loading, and what closes it. */
final class AssemblySection {

    private static final List<Table.Column> CAVITIES =
            List.of(
                    Table.Column.left("Cavity", 17),
                    Table.Column.left("Does", 12),
                    Table.Column.left("Lead", 42),
                    Table.Column.right("Strip, mm", 18),
                    Table.Column.left("Seal or plug", 24),
                    Table.Column.left("Terminal", 22),
                    Table.Column.left("Other end", 38),
                    Table.Column.left("Crimp", 11),
                    Table.Column.left("In", 6),
                    Table.Column.left("Tug", 8));

    private static final List<Table.Column> CLOSING =
            List.of(
                    Table.Column.left("", 4),
                    Table.Column.left("Then", 22),
                    Table.Column.left("Part", 32),
                    Table.Column.left("How", 100));

    private static final String TITLE = "Loading the blocks, seen from the wire side";
    private static final String NONE = "⚠ none";
    private static final Cell NOTHING = Cell.of("");

    private final Sheet sheet;
    private final Kit kit;
    private final Map<String, String> otherEnds = new HashMap<>();
    private final Map<String, String> circuits;

    AssemblySection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        for (WireLine line : kit.wire()) {
            line.leads().forEach(this::noteEnds);
        }
        circuits =
                kit.job().circuits().stream()
                        .collect(Collectors.toMap(Circuit::id, Circuit::title));
    }

    private void noteEnds(KitLead lead) {
        otherEnds.put(lead.from(), "to " + lead.to());
        otherEnds.put(lead.to(), "from " + lead.from());
    }

    void print() {
        if (kit.blocks().isEmpty()) {
            Headings.drawSection(sheet, TITLE, Style.BODY.leading());
            sheet.paragraph(Style.BODY, "No blocks.");
            return;
        }
        Optional<Table.Heading> section = Optional.of(Headings.section(sheet, TITLE));
        for (KitBlock block : kit.blocks()) {
            Table cavities = new Table(sheet, new DrawnBlock(sheet, section, block), CAVITIES);
            section = Optional.empty();
            block.cavities().forEach(cavity -> addCavity(cavities, cavity));
            printClosing(block);
        }
    }

    private void addCavity(Table table, Cavity cavity) {
        Cell id = Cell.of(Style.STRONG, cavity.id());
        cavity.occupant()
                .ifPresentOrElse(
                        occupant ->
                                table.row(
                                        id,
                                        Cell.of(occupant.role().code()),
                                        lead(occupant.lead().wire(), occupant.lead().id()),
                                        Cell.of(Style.STRONG, strip(occupant)),
                                        Cell.of(number(occupant.seal())),
                                        Cell.of(number(occupant.terminal())),
                                        Cell.of(otherEnds.getOrDefault(cavity.id(), "")),
                                        Cell.TICK_BOX,
                                        Cell.TICK_BOX,
                                        Cell.TICK_BOX),
                        () ->
                                table.row(
                                        id,
                                        Cell.of("empty"),
                                        NOTHING,
                                        NOTHING,
                                        Cell.of(number(cavity.plug())),
                                        NOTHING,
                                        NOTHING,
                                        NOTHING,
                                        Cell.TICK_BOX,
                                        NOTHING));
    }

    private static Cell lead(Wire wire, String id) {
        return Cell.of(Style.STRONG, id)
                .plus(
                        Style.SMALL,
                        Figures.size(wire.size())
                                + " "
                                + wire.colour()
                                + " "
                                + wire.colour().inWords());
    }

    private static String strip(Cavity.Occupant occupant) {
        return occupant.terminal().map(terminal -> Figures.of(terminal.stripMm())).orElse("–");
    }

    private void printClosing(KitBlock block) {
        Table table = new Table(sheet, Headings.group(sheet, "Closing " + block.id()), CLOSING);
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, "Wedge, last"),
                Cell.of(block.wedge().map(wedge -> wedge.number().value()).orElse("none")),
                Cell.of(
                        block.wedge().isPresent()
                                ? "Home without force; when it refuses, a terminal or seal is not"
                                        + " home"
                                : "No wedge in this kit: tug every lead again instead"));
        for (KitBlock.Seat seat : block.seats()) {
            table.row(
                    Cell.TICK_BOX,
                    Cell.of(Style.STRONG, "Position " + positions(seat)),
                    Cell.of(seat.part().number().value()),
                    Cell.of(
                            Devices.kind(seat.part())
                                    + ", "
                                    + Devices.ratingAndColour(seat.part())
                                    + ": "
                                    + circuits.getOrDefault(seat.circuit(), seat.circuit())));
        }
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, "Cap"),
                Cell.of(block.cap().number().value()),
                Cell.of("Latched all round, no lead under its edge"));
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, "Legend"),
                Cell.of("label of " + block.id()),
                Cell.of("On the cap, its position 1 over position 1"));
    }

    private static String positions(KitBlock.Seat seat) {
        return seat.positions().stream().map(String::valueOf).collect(Collectors.joining(" + "));
    }

    private static String number(Optional<? extends Part> part) {
        return part.map(found -> found.number().value()).orElse(NONE);
    }
}
