package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.kit.KitBlock;

/** The measures that both sides of a drawn block share, and the outline of its housing. */
final class Housing {
    static final double PITCH = 84;
    static final double MARGIN = 12;

    private static final double TOOTH = 4;
    private static final double CORNER = 9;

    private Housing() {}

    static double width(Block block) {
        int most = BlockRows.of(block).stream().mapToInt(BlockRows.Row::positions).max().orElse(1);
        return most * PITCH + 2 * MARGIN;
    }

    /** The middle of a position in its row. */
    static double centre(BlockRows.Row row, int position) {
        return MARGIN + (position - row.first() + 0.5) * PITCH;
    }

    /** The housing of a row; an end at which the block goes on is drawn broken. */
    static void outline(SvgText svg, KitBlock block, BlockRows.Row row, double top, double bottom) {
        double left = MARGIN / 2;
        double right = row.positions() * PITCH + 1.5 * MARGIN;
        String path =
                "M%s %s H%s".formatted(left + CORNER, top, right - CORNER)
                        + end(right, 1, top, bottom, row.last() < block.block().positions())
                        + "H%s".formatted(left + CORNER)
                        + end(left, -1, bottom, top, row.first() > 1)
                        + "Z";
        svg.put("path", "class", "housing", "d", path);
    }

    private static String end(double x, int out, double from, double to, boolean broken) {
        double down = to > from ? 1 : -1;
        if (broken) {
            double middle = (from + to) / 2;
            return " H%s L%s %s L%s %s L%s %s "
                    .formatted(
                            x,
                            x - out * TOOTH,
                            middle - down * TOOTH,
                            x + out * TOOTH,
                            middle + down * TOOTH,
                            x,
                            to);
        }
        double inner = x - out * CORNER;
        return " Q%s %s %s %s V%s Q%s %s %s %s "
                .formatted(x, from, x, from + down * CORNER, to - down * CORNER, x, to, inner, to);
    }

    /** Where a relay may sit: its two positions held together. */
    static void pairs(SvgText svg, KitBlock block, BlockRows.Row row, double top, double bottom) {
        for (Block.RelayPair pair : block.block().relayPairs()) {
            if (pair.first() >= row.first() && pair.second() <= row.last()) {
                double left = centre(row, pair.first()) - PITCH / 2 + 4;
                svg.put(
                        "rect",
                        "class",
                        "pair",
                        "x",
                        left,
                        "y",
                        top,
                        "width",
                        2 * PITCH - 8,
                        "height",
                        bottom - top,
                        "rx",
                        6);
            }
        }
    }

    /** A name for an id of the page. */
    static String id(String kind, String of) {
        return kind + "-" + of.replaceAll("[^A-Za-z0-9-]", "_");
    }
}
