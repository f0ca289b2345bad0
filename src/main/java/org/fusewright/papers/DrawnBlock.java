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
        drawing = new BlockDrawing(block, sheet);
        float left = sheet.width() - drawing.width() - GAP;
        beside = left >= LEAST_BESIDE;
        facts = facts(block).lines(beside ? left : sheet.width());
    }

    private Cell facts(KitBlock block) {
        return Cell.of(Style.SMALL, named("print.blocks.block", block.block()))
                .plus(Style.SMALL, named("print.blocks.cap", block.cap()))
                .plus(
                        Style.SMALL,
                        block.wedge()
                                .map(wedge -> named("print.blocks.wedge", wedge))
                                .orElseGet(() -> sheet.say("print.blocks.no-wedge")))
                .plus(Style.SMALL, section.isPresent() ? sheet.say("print.blocks.legend") : "");
    }

    private String named(String kind, Part part) {
        return sheet.say(kind, part.number(), part.title());
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
