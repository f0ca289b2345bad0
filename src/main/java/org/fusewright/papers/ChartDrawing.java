package org.fusewright.papers;

import org.fusewright.core.sizing.LogAxis;
import org.fusewright.core.sizing.TimeCurrentChart;
import org.fusewright.core.sizing.TimeCurrentChart.Point;
import org.openpdf.text.pdf.PdfContentByte;

import java.util.List;

/** The plot of a time-current chart with its axes. */
final class ChartDrawing {

    private static final float PLOT = 162;
    private static final float LABELS_LEFT = 30;
    private static final float LABELS_RIGHT = 12;
    private static final float ABOVE_LABELS = 2;
    private static final float BELOW_LABELS = 3;
    private static final float TICK = 2.5f;

    static final float HEIGHT = 3 * Style.SMALL.leading() + ABOVE_LABELS + BELOW_LABELS + PLOT;

    private final Pen pen;
    private final ChartPen chartPen;
    private final TimeCurrentChart chart;
    private final float left;
    private final float right;
    private final float top;
    private final float bottom;

    ChartDrawing(Pen pen, TimeCurrentChart chart, float left, float top, float width) {
        this.pen = pen;
        chartPen = new ChartPen(pen);
        this.chart = chart;
        this.left = left + LABELS_LEFT;
        this.right = left + width - LABELS_RIGHT;
        this.top = top - ABOVE_LABELS - Style.SMALL.leading();
        this.bottom = this.top - PLOT;
    }

    void draw() {
        List<Point> outline = chart.band();
        if (!outline.isEmpty()) {
            chartPen.hatch(left, bottom, right, top, places(outline));
        }
        drawGrid();
        curve(ChartPen.Line.DEVICE, chart.earliest());
        curve(ChartPen.Line.DEVICE, chart.latest());
        curve(ChartPen.Line.WIRE, chart.damage());
        curve(ChartPen.Line.LOADS, chart.demand());
        for (Point start : chart.starts()) {
            chartPen.diamond(x(start.currentA()), y(start.seconds()));
        }
        float farX = x(chart.atFarEnd().currentA());
        chartPen.draw(ChartPen.Line.FAR, farX, bottom, farX, top);
        chartPen.hangingMark(farX, top);
        float nearX = x(chart.atDevice().currentA());
        chartPen.draw(ChartPen.Line.NEAR, nearX, bottom, nearX, top);
        chartPen.standingMark(nearX, bottom);
        pen.box(Style.THIN, left, bottom, right - left, top - bottom);
        label();
    }

    private void curve(ChartPen.Line line, List<Point> points) {
        if (!points.isEmpty()) {
            chartPen.draw(line, places(points));
        }
    }

    /** Lines at decades, ticks between. */
    private void drawGrid() {
        PdfContentByte canvas = pen.canvas();
        pen.stroke(Style.HAIRLINE, Style.RULE);
        LogAxis currentA = chart.currentA();
        LogAxis timeS = chart.timeS();
        for (int decade = currentA.from() + 1; decade < currentA.to(); decade++) {
            line(x(currentA.valueAt(decade)), bottom, x(currentA.valueAt(decade)), top);
        }
        for (int decade = timeS.from() + 1; decade < timeS.to(); decade++) {
            line(left, y(timeS.valueAt(decade)), right, y(timeS.valueAt(decade)));
        }
        canvas.stroke();
        pen.stroke(Style.HAIRLINE, Style.INK);
        for (int decade = currentA.from(); decade < currentA.to(); decade++) {
            for (int times = 2; times < 10; times++) {
                float x = x(times * currentA.valueAt(decade));
                line(x, bottom, x, bottom + TICK);
            }
        }
        for (int decade = timeS.from(); decade < timeS.to(); decade++) {
            for (int times = 2; times < 10; times++) {
                float y = y(times * timeS.valueAt(decade));
                line(left, y, left + TICK, y);
            }
        }
        canvas.stroke();
    }

    private void line(float x1, float y1, float x2, float y2) {
        pen.canvas().moveTo(x1, y1);
        pen.canvas().lineTo(x2, y2);
    }

    private void label() {
        LogAxis currentA = chart.currentA();
        float baseline = bottom - BELOW_LABELS - Style.SMALL.ascent();
        for (int decade = currentA.from(); decade <= currentA.to(); decade++) {
            pen.textCentred(
                    Style.SMALL, currentA.labelAt(decade), x(currentA.valueAt(decade)), baseline);
        }
        pen.textCentred(
                Style.SMALL, "Current, A", (left + right) / 2, baseline - Style.SMALL.leading());
        LogAxis timeS = chart.timeS();
        for (int decade = timeS.from(); decade <= timeS.to(); decade++) {
            pen.textRight(
                    Style.SMALL,
                    timeS.labelAt(decade),
                    left - BELOW_LABELS,
                    y(timeS.valueAt(decade)) - Style.SMALL.size() * 0.36f);
        }
        pen.text(Style.SMALL, "Time, s", left, top + BELOW_LABELS);
    }

    private float[] places(List<Point> points) {
        float[] places = new float[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            places[2 * i] = x(points.get(i).currentA());
            places[2 * i + 1] = y(points.get(i).seconds());
        }
        return places;
    }

    private float x(double currentA) {
        return left + (float) chart.currentA().share(currentA) * (right - left);
    }

    private float y(double seconds) {
        return bottom + (float) chart.timeS().share(seconds) * (top - bottom);
    }
}
