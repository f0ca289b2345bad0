package org.fusewright.papers;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.kit.KitBlock;

import java.util.List;
import java.util.Optional;

/**
 * A block's heading, its drawing and what closes it. The first block has the section's heading
 * above it. Where its table continues overleaf, the heading alone.
 */
final class DrawnBlock implements Table.Heading {

    private static final float GAP = 12;
    private static final float BELOW = 7;
    private static final float LEAST_BESIDE = 150;
    private static final String LEGEND =
            "Row a is the feed side of a device, row b its load side; relay terminals by their"
                + " numbers. Crossed: plugged. One wire in each cavity. The wedge goes in last.";

    private final Sheet sheet;
    private final Optional<Table.Heading> section;
    private final Table.Heading text;
    private final BlockDrawing drawing;
    private final boolean beside;
    private final List<Cell.Line> facts;

    DrawnBlock(Sheet sheet, Optional<Table.Heading> section, KitBlock block) {
        this.sheet = sheet;
        this.section = section;
        text = Headings.group(sheet, block.id() + " · " + block.location());
        drawing = new BlockDrawing(block, sheet.width());
        float left = sheet.width() - drawing.width() - GAP;
        beside = left >= LEAST_BESIDE;
        facts = facts(block).lines(beside ? left : sheet.width());
    }

    private Cell facts(KitBlock block) {
        return Cell.of(Style.SMALL, named("Block", block.block()))
                .plus(Style.SMALL, named("Cap", block.cap()))
                .plus(
                        Style.SMALL,
                        block.wedge()
                                .map(wedge -> named("Locking wedge", wedge))
                                .orElse("Locking wedge: none"))
                .plus(Style.SMALL, section.isPresent() ? LEGEND : "");
    }

    private static String named(String kind, Part part) {
        return kind + ": " + part.number() + ", " + part.title();
    }

    @Override
    public float height() {
        return section.map(Table.Heading::height).orElse(0f) + text.height() + bodyHeight() + BELOW;
    }

    private float bodyHeight() {
        return beside
                ? Math.max(drawing.height(), factsHeight())
                : factsHeight() + GAP / 2 + drawing.height();
    }

    @Override
    public void draw(boolean continued) {
        if (!continued) {
            section.ifPresent(heading -> heading.draw(false));
        }
        text.draw(continued);
        if (!continued) {
            drawFacts(beside ? sheet.left() + drawing.width() + GAP : sheet.left());
            float top = beside ? sheet.y() : sheet.y() - factsHeight() - GAP / 2;
            drawing.draw(sheet.pen(), sheet.left(), top);
            sheet.down(bodyHeight() + BELOW);
        }
    }

    private void drawFacts(float x) {
        float y = sheet.y();
        for (Cell.Line line : facts) {
            sheet.pen().text(line.lettering(), line.text(), x, y - line.lettering().ascent());
            y -= line.lettering().leading();
        }
    }

    private float factsHeight() {
        return (float) facts.stream().mapToDouble(line -> line.lettering().leading()).sum();
    }
}
