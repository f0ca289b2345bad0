package org.fusewright.papers;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.words.Unit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Each block cavity by cavity, in the order of loading, and what closes it. */
final class AssemblySection {

    private static final List<Table.Column> CAVITIES =
            List.of(
                    Table.Column.left("print.column.cavity", 17),
                    Table.Column.left("print.column.does", 12)
                            .holding(Style.BODY, CavityRoles.TEXTS),
                    Table.Column.left("print.column.lead", 42),
                    Table.Column.right("print.column.strip", Unit.MILLIMETRE, 18),
                    Table.Column.left("print.column.seal-or-plug", 24),
                    Table.Column.left("print.column.terminal", 22),
                    Table.Column.left("print.assembly.other-end", 38),
                    Table.Column.left("print.assembly.crimp", 11),
                    Table.Column.left("print.assembly.in", 6),
                    Table.Column.left("print.assembly.tug", 8));

    private static final List<Table.Column> CLOSING =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.assembly.then", 22),
                    Table.Column.left("print.column.part", 32),
                    Table.Column.left("print.assembly.how", 100));

    private static final String TITLE = "print.assembly.title";
    private static final Cell NOTHING = Cell.of("");

    private final Sheet sheet;
    private final Kit kit;
    private final Devices devices;
    private final Map<String, String> otherEnds = new HashMap<>();
    private final Map<String, String> circuits;

    AssemblySection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        devices = new Devices(sheet);
        for (WireLine line : kit.wire()) {
            line.leads().forEach(this::noteEnds);
        }
        circuits =
                kit.job().circuits().stream()
                        .collect(Collectors.toMap(Circuit::id, Circuit::title));
    }

    private void noteEnds(KitLead lead) {
        otherEnds.put(
                lead.from(),
                sheet.say("print.assembly.to", Places.said(lead.to(), sheet.wording())));
        otherEnds.put(
                lead.to(),
                sheet.say("print.assembly.from", Places.said(lead.from(), sheet.wording())));
    }

    void print() {
        if (kit.blocks().isEmpty()) {
            Headings.drawSection(sheet, sheet.say(TITLE), Style.BODY.leading());
            sheet.paragraph(Style.BODY, sheet.say("print.blocks.none"));
            return;
        }
        Optional<Table.Heading> section = Optional.of(Headings.section(sheet, sheet.say(TITLE)));
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
                                        Cell.of(CavityRoles.said(occupant.role(), sheet)),
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
                                        Cell.of(sheet.say("drawing.empty")),
                                        NOTHING,
                                        NOTHING,
                                        Cell.of(number(cavity.plug())),
                                        NOTHING,
                                        NOTHING,
                                        NOTHING,
                                        Cell.TICK_BOX,
                                        NOTHING));
    }

    private Cell lead(Wire wire, String id) {
        return Cell.of(Style.STRONG, id).plus(Style.SMALL, Colours.sizeAndColour(wire, sheet));
    }

    private String strip(Cavity.Occupant occupant) {
        return occupant.terminal()
                .map(terminal -> sheet.figures().of(terminal.stripMm(), Unit.MILLIMETRE))
                .orElse("–");
    }

    private void printClosing(KitBlock block) {
        Table table =
                new Table(
                        sheet,
                        Headings.group(sheet, sheet.say("print.assembly.closing", block.id())),
                        CLOSING);
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, sheet.say("print.assembly.wedge-last")),
                Cell.of(
                        block.wedge()
                                .map(wedge -> wedge.number().value())
                                .orElse(sheet.say("print.part.none"))),
                Cell.of(
                        sheet.say(
                                block.wedge().isPresent()
                                        ? "print.assembly.wedge-home"
                                        : "print.assembly.no-wedge")));
        for (KitBlock.Seat seat : block.seats()) {
            table.row(
                    Cell.TICK_BOX,
                    Cell.of(Style.STRONG, sheet.say("print.assembly.position", positions(seat))),
                    Cell.of(seat.part().number().value()),
                    Cell.of(
                            devices.kind(seat.part())
                                    + ", "
                                    + devices.ratingAndColour(seat.part())
                                    + ": "
                                    + circuits.getOrDefault(seat.circuit(), seat.circuit())));
        }
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, sheet.say("print.assembly.cap")),
                Cell.of(block.cap().number().value()),
                Cell.of(sheet.say("print.assembly.latched")));
        table.row(
                Cell.TICK_BOX,
                Cell.of(Style.STRONG, sheet.say("print.assembly.legend")),
                Cell.of(sheet.say("print.assembly.label-of", block.id())),
                Cell.of(sheet.say("print.assembly.legend-place")));
    }

    private static String positions(KitBlock.Seat seat) {
        return seat.positions().stream().map(String::valueOf).collect(Collectors.joining(" + "));
    }

    private String number(Optional<? extends Part> part) {
        return part.map(found -> found.number().value())
                .orElseGet(() -> sheet.say("print.part.missing"));
    }
}
