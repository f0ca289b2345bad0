package org.fusewright.papers;

import org.fusewright.core.sizing.LogAxis;
import org.fusewright.core.words.Wording;
import org.openpdf.text.pdf.PdfContentByte;

/** The frame of a time-current chart: lines at decades, ticks between, and what the axes say. */
final class ChartAxes {

    static final float ABOVE = 2 + Style.SMALL.leading();
    static final float BELOW = 3 + 2 * Style.SMALL.leading();
    static final float LEFT = 30;
    static final float RIGHT = 12;

    private static final float TO_LABELS = 3;
    private static final float TICK = 2.5f;

    private final Pen pen;
    private final PlotArea area;
    private final Wording wording;

    private ChartAxes(Pen pen, PlotArea area, Wording wording) {
        this.pen = pen;
        this.area = area;
        this.wording = wording;
    }

    static void draw(Pen pen, PlotArea area, Wording wording) {
        ChartAxes axes = new ChartAxes(pen, area, wording);
        axes.drawGrid();
        axes.drawTicks();
        pen.box(Style.THIN, area.left(), area.bottom(), area.width(), PlotArea.HEIGHT);
        axes.label();
    }

    private void drawGrid() {
        pen.stroke(Style.HAIRLINE, Style.RULE);
        LogAxis currentA = area.currentA();
        LogAxis timeS = area.timeS();
        for (int decade = currentA.from() + 1; decade < currentA.to(); decade++) {
            float x = area.x(currentA.valueAt(decade));
            line(x, area.bottom(), x, area.top());
        }
        for (int decade = timeS.from() + 1; decade < timeS.to(); decade++) {
            float y = area.y(timeS.valueAt(decade));
            line(area.left(), y, area.right(), y);
        }
        pen.canvas().stroke();
    }

    private void drawTicks() {
        pen.stroke(Style.HAIRLINE, Style.INK);
        LogAxis currentA = area.currentA();
        LogAxis timeS = area.timeS();
        for (int decade = currentA.from(); decade < currentA.to(); decade++) {
            for (int times = 2; times < 10; times++) {
                float x = area.x(times * currentA.valueAt(decade));
                line(x, area.bottom(), x, area.bottom() + TICK);
            }
        }
        for (int decade = timeS.from(); decade < timeS.to(); decade++) {
            for (int times = 2; times < 10; times++) {
                float y = area.y(times * timeS.valueAt(decade));
                line(area.left(), y, area.left() + TICK, y);
            }
        }
        pen.canvas().stroke();
    }

    private void line(float x1, float y1, float x2, float y2) {
        PdfContentByte canvas = pen.canvas();
        canvas.moveTo(x1, y1);
        canvas.lineTo(x2, y2);
    }

    private void label() {
        LogAxis currentA = area.currentA();
        float baseline = area.bottom() - TO_LABELS - Style.SMALL.ascent();
        for (int decade = currentA.from(); decade <= currentA.to(); decade++) {
            pen.textCentred(
                    Style.SMALL,
                    decade(currentA, decade),
                    area.x(currentA.valueAt(decade)),
                    baseline);
        }
        pen.textCentred(
                Style.SMALL,
                wording.say("chart.current"),
                (area.left() + area.right()) / 2,
                baseline - Style.SMALL.leading());
        LogAxis timeS = area.timeS();
        for (int decade = timeS.from(); decade <= timeS.to(); decade++) {
            pen.textRight(
                    Style.SMALL,
                    decade(timeS, decade),
                    area.left() - TO_LABELS,
                    area.y(timeS.valueAt(decade)) - Style.SMALL.size() * 0.36f);
        }
        pen.text(Style.SMALL, wording.say("chart.time"), area.left(), area.top() + TO_LABELS);
    }

    private String decade(LogAxis axis, int decade) {
        return axis.labelAt(decade).replace('.', wording.language().decimalSign());
    }
}
