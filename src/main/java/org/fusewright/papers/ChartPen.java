package org.fusewright.papers;

import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfTemplate;

import java.awt.Color;

/** How each thing of a time-current chart is drawn, so that a copier keeps them apart. */
final class ChartPen {

    /** Half the width of a mark. */
    static final float MARK = 3;

    private static final float HATCH = 5;
    private static final float[] SOLID = {};

    /** The lines of a chart. */
    enum Line {
        DEVICE(0.9f),
        LOADS(1.3f, 1.3f, 2),
        WIRE(1.5f, 7, 3),
        FAR(0.7f, 6, 2, 1, 2),
        NEAR(0.7f, 6, 2, 1, 2, 1, 2);

        private final float width;
        private final float[] dashes;

        Line(float width, float... dashes) {
            this.width = width;
            this.dashes = dashes;
        }
    }

    private final Pen pen;
    private final PdfContentByte canvas;

    ChartPen(Pen pen) {
        this.pen = pen;
        this.canvas = pen.canvas();
    }

    /** A line through points, x and y in turn. */
    void draw(Line line, float... points) {
        pen.stroke(line.width, Style.INK);
        boolean dashed = line.dashes.length > 0;
        if (dashed) {
            canvas.setLineDash(line.dashes, 0);
        }
        trace(points);
        canvas.stroke();
        if (dashed) {
            canvas.setLineDash(SOLID, 0);
        }
    }

    /** Slanted lines from a corner at 0, 0 on; some of them reach beyond the rectangle. */
    void hatch(float width, float height) {
        pen.stroke(Style.HAIRLINE, Style.RULE);
        for (float x = -height; x < width; x += HATCH) {
            canvas.moveTo(x, 0);
            canvas.lineTo(x + height, height);
        }
        canvas.stroke();
    }

    /** Shows a form, placed by its corner at 0, 0, inside an outline alone. */
    void inside(float[] outline, PdfTemplate form, float left, float bottom) {
        canvas.saveState();
        trace(outline);
        canvas.clip();
        canvas.newPath();
        canvas.addTemplate(form, left, bottom);
        canvas.restoreState();
    }

    /** An end of a start: a filled diamond. */
    void diamond(float x, float y) {
        trace(x - MARK, y, x, y + MARK, x + MARK, y, x, y - MARK);
        canvas.fill();
    }

    /** A short at the far end: an open triangle that hangs. */
    void hangingMark(float x, float top) {
        pen.stroke(Style.THIN, Style.INK);
        canvas.setColorFill(Color.WHITE);
        trace(x - MARK, top, x + MARK, top, x, top - 2 * MARK);
        canvas.closePathFillStroke();
        canvas.setColorFill(Style.INK);
    }

    /** A short at the device: a filled triangle that stands. */
    void standingMark(float x, float bottom) {
        trace(x - MARK, bottom, x + MARK, bottom, x, bottom + 2 * MARK);
        canvas.fill();
    }

    private void trace(float... points) {
        canvas.moveTo(points[0], points[1]);
        for (int i = 2; i < points.length; i += 2) {
            canvas.lineTo(points[i], points[i + 1]);
        }
    }
}
