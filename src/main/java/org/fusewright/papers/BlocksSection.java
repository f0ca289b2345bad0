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
                    Table.Column.left("Position", 13),
                    Table.Column.left("Circuit", 52),
                    Table.Column.left("Part", 30),
                    Table.Column.left("Rating", 24),
                    Table.Column.left("Kind", 27));

    private static final String TITLE = "Blocks, seen from the wire side";

    private final Sheet sheet;
    private final Kit kit;
    private final Map<String, Circuit> circuits;

    BlocksSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        circuits =
                kit.job().circuits().stream()
                        .collect(Collectors.toMap(Circuit::id, Function.identity()));
    }

    void print() {
        if (kit.blocks().isEmpty()) {
            Headings.drawSection(sheet, TITLE, Style.BODY.leading());
            sheet.paragraph(Style.BODY, "No blocks.");
            printWhy();
            return;
        }
        Optional<Table.Heading> section = Optional.of(Headings.section(sheet, TITLE));
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
            sheet.paragraph(Style.SMALL, kit.fit().proof().english());
        }
        for (Text why : kit.fit().why()) {
            sheet.paragraph(Style.SMALL, why.english());
        }
        for (Kit.Move move : kit.fit().moved()) {
            sheet.paragraph(Style.SMALL, "Moved: " + move.says().english() + ".");
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
                                        Cell.of("free")));
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
                Cell.of(Devices.ratingAndColour(part)),
                Cell.of(Devices.kind(part)));
    }
}
