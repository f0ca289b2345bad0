package org.fusewright.papers;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;

import java.util.List;
import java.util.Map;
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
        String section = "Blocks, seen from the wire side";
        if (kit.blocks().isEmpty()) {
            Headings.drawSection(sheet, section, Style.BODY.leading());
            sheet.paragraph(Style.BODY, "No blocks.");
            return;
        }
        for (KitBlock block : kit.blocks()) {
            Table table = new Table(sheet, new DrawnBlock(sheet, section, block), COLUMNS);
            section = "";
            for (int position = 1; position <= block.block().positions(); position++) {
                addRow(table, block, position);
            }
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
                        : Cell.of(circuit.title()).plus(Style.SMALL, circuit.id());
        String positions =
                seat.positions().stream().map(String::valueOf).collect(Collectors.joining(" + "));
        table.row(
                Cell.of(Style.STRONG, positions),
                name,
                Cell.of(Style.STRONG, part.number().value()),
                Cell.of(Devices.ratingAndColour(part)),
                Cell.of(Devices.kind(part)));
    }

    /** A block's heading, its drawing and what closes it; continued, the heading alone. */
    private static final class DrawnBlock implements Table.Heading {

        private static final float GAP = 14;
        private static final float BELOW = 8;
        private static final float LEAST_BESIDE = 150;

        private final Sheet sheet;
        private final Table.Heading text;
        private final BlockDrawing drawing;
        private final boolean beside;
        private final List<Cell.Line> facts;

        DrawnBlock(Sheet sheet, String section, KitBlock block) {
            this.sheet = sheet;
            text = Headings.group(sheet, section, block.id() + " · " + block.location());
            drawing = new BlockDrawing(block, sheet.width());
            float left = sheet.width() - drawing.width() - GAP;
            beside = left >= LEAST_BESIDE;
            facts = facts(block).lines(beside ? left : sheet.width());
        }

        private static Cell facts(KitBlock block) {
            Cell facts =
                    named(Cell.of(Style.STRONG, "Block"), block.block()).plus(Style.STRONG, "Cap");
            facts = named(facts, block.cap()).plus(Style.STRONG, "Locking wedge");
            facts =
                    block.wedge().isPresent()
                            ? named(facts, block.wedge().get())
                            : facts.plus(Style.SMALL, "none, by choice of the job");
            return facts.plus(
                    Style.SMALL,
                    "Upper row a: feed side. Lower row b: load side. Crossed: plugged. One wire"
                            + " in each cavity; the wedge goes in last.");
        }

        private static Cell named(Cell facts, Part part) {
            return facts.plus(Style.SMALL, part.number() + "  " + part.title());
        }

        @Override
        public float height() {
            float factsHeight = factsHeight();
            float body =
                    beside
                            ? Math.max(drawing.height(), factsHeight)
                            : factsHeight + GAP / 2 + drawing.height();
            return text.height() + body + BELOW;
        }

        @Override
        public void draw(boolean continued) {
            text.draw(continued);
            if (continued) {
                return;
            }
            if (beside) {
                drawFacts(sheet.left() + drawing.width() + GAP);
                drawing.draw(sheet.pen(), sheet.left(), sheet.y());
                sheet.down(Math.max(drawing.height(), factsHeight()));
            } else {
                drawFacts(sheet.left());
                sheet.down(factsHeight() + GAP / 2);
                drawing.draw(sheet.pen(), sheet.left(), sheet.y());
                sheet.down(drawing.height());
            }
            sheet.down(BELOW);
        }

        private void drawFacts(float x) {
            float y = sheet.y();
            for (Cell.Line line : facts) {
                sheet.pen().text(line.lettering(), line.text(), x, y - line.lettering().ascent());
                y -= line.lettering().leading();
            }
        }

        private float factsHeight() {
            float height = 0;
            for (Cell.Line line : facts) {
                height += line.lettering().leading();
            }
            return height;
        }
    }
}
