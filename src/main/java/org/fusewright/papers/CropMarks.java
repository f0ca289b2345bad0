package org.fusewright.papers;

/** Short lines outside a label's corners that say where to cut. */
final class CropMarks {

    /** How far they reach out from the label. */
    static final float REACH = Style.mm(4);

    private static final float GAP = Style.mm(1);

    private CropMarks() {}

    /** Round the label with this left upper corner. */
    static void draw(Pen pen, float left, float top, float width, float height) {
        for (float x : new float[] {left, left + width}) {
            pen.line(Style.HAIRLINE, Style.INK, x, top + GAP, x, top + REACH);
            pen.line(Style.HAIRLINE, Style.INK, x, top - height - GAP, x, top - height - REACH);
        }
        for (float y : new float[] {top, top - height}) {
            pen.line(Style.HAIRLINE, Style.INK, left - GAP, y, left - REACH, y);
            pen.line(Style.HAIRLINE, Style.INK, left + width + GAP, y, left + width + REACH, y);
        }
    }
}
