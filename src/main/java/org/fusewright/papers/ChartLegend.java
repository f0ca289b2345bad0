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
    private final ChartPen chartPen;
    private float x;
    private float y;

    private ChartLegend(Pen pen, PdfTemplate hatch, float left, float top) {
        this.pen = pen;
        this.hatch = hatch;
        chartPen = new ChartPen(pen);
        x = left;
        y = top - Style.SMALL.leading() / 2;
    }

    static void draw(Pen pen, PdfTemplate hatch, float left, float top) {
        ChartLegend legend = new ChartLegend(pen, hatch, left, top);
        legend.device();
        legend.line(ChartPen.Line.LOADS);
        legend.chartPen.diamond(legend.middle(), legend.y);
        legend.say("the loads start and run");
        legend.line(ChartPen.Line.WIRE);
        legend.say("the weakest lead is too hot");
        legend.x = left;
        legend.y -= Style.SMALL.leading() + 2;
        legend.line(ChartPen.Line.FAR);
        legend.chartPen.hangingMark(legend.middle(), legend.y + HALF);
        legend.say("dead short at the far end");
        legend.line(ChartPen.Line.NEAR);
        legend.chartPen.standingMark(legend.middle(), legend.y - HALF);
        legend.say("dead short at the device");
    }

    private void device() {
        float right = x + SAMPLE;
        float[] sample = {x, y - HALF, right, y - HALF, right, y + HALF, x, y + HALF};
        chartPen.inside(sample, hatch, x, y - HALF);
        chartPen.draw(ChartPen.Line.DEVICE, x, y - HALF, right, y - HALF);
        chartPen.draw(ChartPen.Line.DEVICE, x, y + HALF, right, y + HALF);
        say("the device may open");
    }

    private void line(ChartPen.Line line) {
        chartPen.draw(line, x, y, x + SAMPLE, y);
    }

    private float middle() {
        return x + SAMPLE / 2;
    }

    private void say(String words) {
        x += SAMPLE + BESIDE;
        pen.text(Style.SMALL, words, x, y - HALF);
        x += Style.SMALL.width(words) + BETWEEN;
    }
}
