package org.fusewright.papers;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows under a heading that never stands alone at a page's end. A row moves to the next page as a
 * whole, unless it is taller than a page; there the head of the table is repeated.
 */
final class Table {

    private static final float GAP = 6;
    private static final float PAD_ABOVE = 1.6f;
    private static final float PAD_BELOW = 2.2f;

    /** A column's share of the width is its part of the sum of all shares. */
    record Column(String title, float share, boolean atRight) {

        static Column left(String title, float share) {
            return new Column(title, share, false);
        }

        static Column right(String title, float share) {
            return new Column(title, share, true);
        }
    }

    /** What stands above the rows, on the first page and on each further one. */
    interface Heading {

        float height();

        /** Draws it from the sheet's place on and moves down. */
        void draw(boolean continued);
    }

    private final Sheet sheet;
    private final Heading heading;
    private final List<Column> columns;
    private final float[] x;
    private final float[] widths;
    private boolean begun;

    Table(Sheet sheet, Heading heading, List<Column> columns) {
        this.sheet = sheet;
        this.heading = heading;
        this.columns = List.copyOf(columns);
        x = new float[columns.size()];
        widths = new float[columns.size()];
        float shares = (float) columns.stream().mapToDouble(Column::share).sum();
        float free = sheet.width() - GAP * (columns.size() - 1);
        float at = sheet.left();
        for (int i = 0; i < widths.length; i++) {
            x[i] = at;
            widths[i] = free * columns.get(i).share() / shares;
            at += widths[i] + GAP;
        }
    }

    void row(Cell... cells) {
        List<List<Cell.Line>> lines = new ArrayList<>(cells.length);
        for (int i = 0; i < cells.length; i++) {
            lines.add(cells[i].lines(widths[i]));
        }
        float height = height(lines);
        if (!begun) {
            float first = heading.height() + headHeight() + height;
            sheet.keep(Math.min(first, sheet.pageRoom()));
            begin(false);
        } else if (sheet.room() < height) {
            turnPage();
        }
        int[] printed = new int[cells.length];
        while (!print(lines, printed)) {
            turnPage();
        }
        sheet.pen()
                .line(
                        Style.HAIRLINE,
                        Style.RULE,
                        sheet.left(),
                        sheet.y(),
                        sheet.right(),
                        sheet.y());
    }

    private void turnPage() {
        sheet.newPage();
        begin(true);
    }

    private void begin(boolean continued) {
        begun = true;
        heading.draw(continued);
        sheet.pen()
                .fill(
                        Style.TINT,
                        sheet.left(),
                        sheet.y() - headHeight(),
                        sheet.width(),
                        headHeight());
        float baseline = sheet.y() - PAD_ABOVE - Style.SMALL.ascent();
        for (int i = 0; i < widths.length; i++) {
            show(Style.SMALL, Style.SMALL.clip(columns.get(i).title(), widths[i]), i, baseline);
        }
        sheet.down(headHeight());
        sheet.pen().line(Style.THIN, Style.INK, sheet.left(), sheet.y(), sheet.right(), sheet.y());
    }

    private static float headHeight() {
        return PAD_ABOVE + Style.SMALL.leading() + PAD_BELOW;
    }

    /** Prints what fits of each cell; true when nothing is left. */
    private boolean print(List<List<Cell.Line>> lines, int[] printed) {
        float room = sheet.room() - PAD_ABOVE - PAD_BELOW;
        float tallest = 0;
        boolean complete = true;
        for (int i = 0; i < printed.length; i++) {
            float used = 0;
            List<Cell.Line> cell = lines.get(i);
            while (printed[i] < cell.size()) {
                Cell.Line line = cell.get(printed[i]);
                float leading = line.lettering().leading();
                if (used + leading > room) {
                    complete = false;
                    break;
                }
                float baseline = sheet.y() - PAD_ABOVE - used - line.lettering().ascent();
                show(line.lettering(), line.text(), i, baseline);
                used += leading;
                printed[i]++;
            }
            tallest = Math.max(tallest, used);
        }
        sheet.down(PAD_ABOVE + tallest + PAD_BELOW);
        return complete;
    }

    private void show(Lettering lettering, String text, int column, float baseline) {
        if (columns.get(column).atRight()) {
            sheet.pen().textRight(lettering, text, x[column] + widths[column], baseline);
        } else {
            sheet.pen().text(lettering, text, x[column], baseline);
        }
    }

    private static float height(List<List<Cell.Line>> cells) {
        float tallest = 0;
        for (List<Cell.Line> cell : cells) {
            float height = 0;
            for (Cell.Line line : cell) {
                height += line.lettering().leading();
            }
            tallest = Math.max(tallest, height);
        }
        return PAD_ABOVE + tallest + PAD_BELOW;
    }
}
