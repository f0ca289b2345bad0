package org.fusewright.papers;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Each block: drawn from the wire side, what closes it, and what sits in its positions. */
final class BlocksSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("print.column.position", 13),
                    Table.Column.left("print.column.circuit", 52),
                    Table.Column.left("print.column.part", 30),
                    Table.Column.left("print.column.rating", 24),
                    Table.Column.left("print.column.kind", 27));

    private static final String TITLE = "print.blocks.title";

    private final Sheet sheet;
    private final Kit kit;
    private final Devices devices;
    private final Map<String, Circuit> circuits;

    BlocksSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        devices = new Devices(sheet);
        circuits =
                kit.job().circuits().stream()
                        .collect(Collectors.toMap(Circuit::id, Function.identity()));
    }

    void print() {
        if (kit.blocks().isEmpty()) {
            Headings.drawSection(sheet, sheet.say(TITLE), Style.BODY.leading());
            sheet.paragraph(Style.BODY, sheet.say("print.blocks.none"));
            printWhy();
            return;
        }
        Optional<Table.Heading> section = Optional.of(Headings.section(sheet, sheet.say(TITLE)));
        for (KitBlock block : kit.blocks()) {
            Table table = new Table(sheet, new DrawnBlock(sheet, section, block), COLUMNS);
            section = Optional.empty();
            table.keepTogether(block.block().positions());
            for (int position = 1; position <= block.block().positions(); position++) {
                addRow(table, block, position);
            }
        }
        printWhy();
    }

    private void printWhy() {
        if (!kit.blocks().isEmpty()) {
            sheet.paragraph(Style.SMALL, sheet.say(kit.fit().proof()));
        }
        for (Text why : kit.fit().why()) {
            sheet.paragraph(Style.SMALL, sheet.say(why));
        }
        for (Kit.Move move : kit.fit().moved()) {
            sheet.paragraph(Style.SMALL, sheet.say("print.blocks.moved", move.says()));
        }
    }

    private void addRow(Table table, KitBlock block, int position) {
        int sought = position;
        block.seats().stream()
                .filter(seat -> seat.positions().contains(sought))
                .findFirst()
                .ifPresentOrElse(
                        seat -> {
                            if (seat.positions().getFirst() == sought) {
                                addSeat(table, seat);
                            }
                        },
                        () ->
                                table.row(
                                        Cell.of(Style.STRONG, Integer.toString(sought)),
                                        Cell.of(sheet.say("drawing.free"))));
    }

    private void addSeat(Table table, KitBlock.Seat seat) {
        Part part = seat.part();
        Circuit circuit = circuits.get(seat.circuit());
        Cell name =
                circuit == null
                        ? Cell.of(seat.circuit())
                        : Cell.of(circuit.title() + " · " + circuit.id());
        String positions =
                seat.positions().stream().map(String::valueOf).collect(Collectors.joining(" + "));
        table.row(
                Cell.of(Style.STRONG, positions),
                name,
                Cell.of(Style.STRONG, part.number().value()),
                Cell.of(devices.ratingAndColour(part)),
                Cell.of(devices.kind(part)));
    }
}
