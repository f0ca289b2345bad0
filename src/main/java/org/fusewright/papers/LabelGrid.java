package org.fusewright.papers;

/**
 * Labels of one height in rows of two across the sheet, with lines to cut along. A wide label takes
 * a row of its own.
 */
final class LabelGrid {

    private static final int COLUMNS = 2;

    private final Sheet sheet;
    private final float height;
    private int column;

    /** What stands on a label, drawn into its field by the left upper corner. */
    interface Content {
        void draw(Pen pen, float left, float top, float width);
    }

    LabelGrid(Sheet sheet, float height) {
        this.sheet = sheet;
        this.height = height;
    }

    float width() {
        return sheet.width() / COLUMNS;
    }

    void add(Content content) {
        startRow();
        draw(content, sheet.left() + column * width(), width());
        column++;
        if (column == COLUMNS) {
            end();
        }
    }

    void addWide(Content content) {
        end();
        startRow();
        draw(content, sheet.left(), sheet.width());
        column = COLUMNS;
        end();
    }

    /** Closes the row; what comes next stands below it. */
    void end() {
        if (column > 0) {
            sheet.down(height);
            column = 0;
        }
    }

    private void startRow() {
        if (column == 0) {
            sheet.keep(height);
        }
    }

    private void draw(Content content, float left, float width) {
        sheet.pen().box(Style.HAIRLINE, left, sheet.y() - height, width, height);
        content.draw(sheet.pen(), left, sheet.y(), width);
    }
}
