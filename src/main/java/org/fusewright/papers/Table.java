package org.fusewright.papers;

import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Rows under a heading that never stands alone at a page's end, in groups where it has any. A row
 * moves to the next page as a whole, unless it is very tall; there the head of the table and the
 * heading of the group are repeated.
 */
final class Table {

    private static final float GAP = 8;
    private static final float PAD_ABOVE = 1.6f;
    private static final float PAD_BELOW = 2.2f;

    /** A row of more than half a page begins where so much is left, and goes on overleaf. */
    private static final float SPLIT_FROM = 48;

    private static final Heading NO_GROUP =
            new Heading() {
                @Override
                public float height() {
                    return 0;
                }

                @Override
                public void draw(boolean continued) {}
            };

    /** A column's share of the width is its part of the sum of all shares. */
    record Column(
            Function<Sheet, String> title,
            float share,
            boolean atRight,
            Lettering lettering,
            List<String> holds) {

        private Column(Function<Sheet, String> title, float share, boolean atRight) {
            this(title, share, atRight, Style.BODY, List.of());
        }

        /** For a box to tick. */
        static Column unnamed(float share) {
            return new Column(_ -> "", share, false);
        }

        /**
         * @param title a text of the bundle
         */
        static Column left(String title, float share) {
            return new Column(sheet -> sheet.say(title), share, false);
        }

        static Column right(String title, float share) {
            return new Column(sheet -> sheet.say(title), share, true);
        }

        static Column right(Text title, float share) {
            return new Column(sheet -> sheet.say(title), share, true);
        }

        /**
         * Makes room for these texts, each on one line.
         *
         * @param texts of the bundle
         */
        Column holding(Lettering held, String... texts) {
            return new Column(title, share, atRight, held, List.of(texts));
        }

        /** Of figures in a unit, whose sign as the reader counts it goes into the title. */
        static Column right(String title, Unit unit, float share) {
            return new Column(sheet -> sheet.say(title, sheet.figures().sign(unit)), share, true);
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
    private final List<List<String>> titles = new ArrayList<>();
    private final float headHeight;
    private final float[] x;
    private final float[] widths;
    private Heading group = NO_GROUP;
    private boolean groupPending;
    private float kept;
    private boolean begun;

    Table(Sheet sheet, Heading heading, List<Column> columns) {
        this.sheet = sheet;
        this.heading = heading;
        this.columns = List.copyOf(columns);
        x = new float[columns.size()];
        widths = new float[columns.size()];
        float shares = (float) columns.stream().mapToDouble(Column::share).sum();
        float free = sheet.width() - GAP * (columns.size() - 1);
        for (int i = 0; i < widths.length; i++) {
            widths[i] = free * columns.get(i).share() / shares;
        }
        List<String> named = columns.stream().map(column -> column.title().apply(sheet)).toList();
        widen(named);
        float at = sheet.left();
        int most = 1;
        for (int i = 0; i < widths.length; i++) {
            x[i] = at;
            at += widths[i] + GAP;
            List<String> lines = Style.SMALL.wrap(named.get(i), widths[i]);
            titles.add(lines);
            most = Math.max(most, lines.size());
        }
        headHeight = PAD_ABOVE + most * Style.SMALL.leading() + PAD_BELOW;
    }

    /** Gives each column its least width, at the cost of columns of words that have more. */
    private void widen(List<String> named) {
        float[] least = new float[widths.length];
        float lacking = 0;
        float spare = 0;
        for (int i = 0; i < widths.length; i++) {
            least[i] = leastWidth(i, named.get(i));
            lacking += Math.max(0, least[i] - widths[i]);
            spare += spare(i, least[i]);
        }
        if (lacking == 0) {
            return;
        }
        float moved = Math.min(lacking, spare);
        for (int i = 0; i < widths.length; i++) {
            float more = least[i] - widths[i];
            widths[i] += more > 0 ? more * moved / lacking : -spare(i, least[i]) * moved / spare;
        }
    }

    /** What a column can do without; figures are not broken, so their columns give nothing. */
    private float spare(int column, float least) {
        return columns.get(column).atRight() ? 0 : Math.max(0, widths[column] - least);
    }

    /** Of the longest word of the title, and of what the column must hold; a box stays as it is. */
    private float leastWidth(int column, String title) {
        if (title.isEmpty()) {
            return widths[column];
        }
        float least = Style.SMALL.widestWord(title);
        for (String held : columns.get(column).holds()) {
            least = Math.max(least, columns.get(column).lettering().width(sheet.say(held)));
        }
        return least;
    }

    /** Starts a group of rows; its heading stays with the group's first row. */
    void group(Heading groupHeading) {
        group = groupHeading;
        groupPending = true;
    }

    /** Asks for room for so many rows of one line before the first one, if a page has that much. */
    void keepTogether(int rows) {
        kept = rows * (PAD_ABOVE + Style.BODY.leading() + PAD_BELOW);
    }

    void row(Cell... cells) {
        List<List<Cell.Line>> lines = new ArrayList<>(cells.length);
        for (int i = 0; i < cells.length; i++) {
            lines.add(cells[i].lines(widths[i]));
        }
        float needed = groupPending ? group.height() : 0;
        float height = height(lines);
        needed += height > sheet.pageRoom() / 2 ? SPLIT_FROM : height;
        if (!begun) {
            float first = heading.height() + headHeight;
            boolean all = first + kept <= sheet.pageRoom();
            sheet.keep(first + (all ? Math.max(kept, needed) : needed));
            begin(false);
        } else if (sheet.room() < needed) {
            turnPage();
        }
        if (groupPending) {
            groupPending = false;
            drawGroup(false);
        }
        int[] printed = new int[cells.length];
        while (!print(lines, printed)) {
            turnPage();
        }
        rule(Style.HAIRLINE, Style.RULE);
    }

    private void turnPage() {
        sheet.newPage();
        begin(true);
        if (group != NO_GROUP && !groupPending) {
            drawGroup(true);
        }
    }

    private void drawGroup(boolean continued) {
        group.draw(continued);
        rule(Style.THIN, Style.INK);
    }

    private void begin(boolean continued) {
        begun = true;
        heading.draw(continued);
        sheet.pen()
                .fill(Style.TINT, sheet.left(), sheet.y() - headHeight, sheet.width(), headHeight);
        float baseline = sheet.y() - PAD_ABOVE - Style.SMALL.ascent();
        for (int i = 0; i < widths.length; i++) {
            float line = baseline;
            for (String title : titles.get(i)) {
                show(Style.SMALL, title, i, line);
                line -= Style.SMALL.leading();
            }
        }
        sheet.down(headHeight);
        rule(Style.THIN, Style.INK);
    }

    private void rule(float width, Color colour) {
        sheet.pen().line(width, colour, sheet.left(), sheet.y(), sheet.right(), sheet.y());
    }

    /** Prints what fits of each cell, first lines on one baseline; true when nothing is left. */
    private boolean print(List<List<Cell.Line>> cells, int[] printed) {
        float room = sheet.room() - PAD_ABOVE - PAD_BELOW;
        float ascent = ascent(cells, printed);
        float tallest = 0;
        boolean complete = true;
        for (int i = 0; i < printed.length; i++) {
            List<Cell.Line> cell = cells.get(i);
            float used = printed[i] < cell.size() ? ascent - ascent(cell.get(printed[i])) : 0;
            while (printed[i] < cell.size()) {
                Cell.Line line = cell.get(printed[i]);
                float leading = line.lettering().leading();
                if (used + leading > room) {
                    complete = false;
                    break;
                }
                show(line.lettering(), line.text(), i, sheet.y() - PAD_ABOVE - used - ascent(line));
                used += leading;
                printed[i]++;
            }
            tallest = Math.max(tallest, used);
        }
        sheet.down(PAD_ABOVE + tallest + PAD_BELOW);
        return complete;
    }

    /** The largest ascent of the cells' next lines. */
    private static float ascent(List<List<Cell.Line>> cells, int[] printed) {
        float largest = 0;
        for (int i = 0; i < printed.length; i++) {
            if (printed[i] < cells.get(i).size()) {
                largest = Math.max(largest, ascent(cells.get(i).get(printed[i])));
            }
        }
        return largest;
    }

    private static float ascent(Cell.Line line) {
        return line.lettering().ascent();
    }

    private void show(Lettering lettering, String text, int column, float baseline) {
        if (columns.get(column).atRight()) {
            sheet.pen().textRight(lettering, text, x[column] + widths[column], baseline);
        } else {
            sheet.pen().text(lettering, text, x[column], baseline);
        }
    }

    private static float height(List<List<Cell.Line>> cells) {
        float ascent = ascent(cells, new int[cells.size()]);
        float tallest = 0;
        for (List<Cell.Line> cell : cells) {
            float height = ascent - ascent(cell.getFirst());
            for (Cell.Line line : cell) {
                height += line.lettering().leading();
            }
            tallest = Math.max(tallest, height);
        }
        return PAD_ABOVE + tallest + PAD_BELOW;
    }
}
