package org.fusewright.papers;

import org.openpdf.text.pdf.PdfTemplate;

/** What the lines and marks of time-current charts mean. */
final class ChartLegend {

    static final float HEIGHT = 32;

    private static final float SAMPLE = 24;
    private static final float BESIDE = 5;
    private static final float BETWEEN = 16;
    private static final float HALF = 3;

    private final Pen pen;
    private final PdfTemplate hatch;
    private final Sheet sheet;
    private final ChartPen chartPen;
    private float x;
    private float y;

    /** Draws from a corner at 0, 0 on, over the sheet's width. */
    ChartLegend(Pen pen, PdfTemplate hatch, Sheet sheet) {
        this.pen = pen;
        this.hatch = hatch;
        this.sheet = sheet;
        chartPen = new ChartPen(pen);
        y = -Style.SMALL.leading() / 2;
    }

    void draw() {
        device();
        line(ChartPen.Line.LOADS);
        chartPen.diamond(middle(), y);
        say("print.chart.loads");
        line(ChartPen.Line.WIRE);
        say("print.chart.wire");
        x = 0;
        y -= Style.SMALL.leading() + 2;
        line(ChartPen.Line.FAR);
        chartPen.hangingMark(middle(), y + HALF);
        say("print.chart.far-short");
        line(ChartPen.Line.NEAR);
        chartPen.standingMark(middle(), y - HALF);
        say("print.chart.near-short");
    }

    private void device() {
        float right = x + SAMPLE;
        float[] sample = {x, y - HALF, right, y - HALF, right, y + HALF, x, y + HALF};
        chartPen.inside(sample, hatch, x, y - HALF);
        chartPen.draw(ChartPen.Line.DEVICE, x, y - HALF, right, y - HALF);
        chartPen.draw(ChartPen.Line.DEVICE, x, y + HALF, right, y + HALF);
        say("print.chart.device");
    }

    private void line(ChartPen.Line line) {
        chartPen.draw(line, x, y, x + SAMPLE, y);
    }

    private float middle() {
        return x + SAMPLE / 2;
    }

    private void say(String key) {
        String words = sheet.say(key);
        x += SAMPLE + BESIDE;
        pen.text(Style.SMALL, words, x, y - HALF);
        x += Style.SMALL.width(words) + BETWEEN;
    }
}
