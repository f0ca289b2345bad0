package org.fusewright.papers;

import org.fusewright.core.sizing.LogAxis;
import org.fusewright.core.words.Wording;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfTemplate;

import java.util.HashMap;
import java.util.Map;

/**
 * What the charts of one document have in common, drawn once and then only placed: that is most of
 * what there is to write and to compress.
 */
final class ChartForms {

    /** A label may reach beyond the room that is counted for it. */
    private static final float SPARE = 4;

    private record Axes(LogAxis currentA, LogAxis timeS) {}

    private final PdfContentByte canvas;
    private final Wording wording;
    private final float plotWidth;
    private final PdfTemplate legend;
    private final PdfTemplate hatch;
    private final Map<Axes, PdfTemplate> frames = new HashMap<>();

    /**
     * @param width of a chart with its labels
     */
    ChartForms(Sheet sheet, float width) {
        canvas = sheet.pen().canvas();
        wording = sheet.wording();
        plotWidth = width - ChartAxes.LEFT - ChartAxes.RIGHT;
        hatch = form(0, 0, plotWidth, PlotArea.HEIGHT);
        new ChartPen(new Pen(hatch)).hatch(plotWidth, PlotArea.HEIGHT);
        legend = form(0, -ChartLegend.HEIGHT, sheet.width(), 0);
        new ChartLegend(new Pen(legend), hatch, sheet).draw();
    }

    float plotWidth() {
        return plotWidth;
    }

    void placeLegend(Pen pen, float left, float top) {
        pen.canvas().addTemplate(legend, left, top);
    }

    /** Slanted lines all over a plot. */
    PdfTemplate hatch() {
        return hatch;
    }

    void placeAxes(Pen pen, PlotArea area) {
        PdfTemplate frame =
                frames.computeIfAbsent(new Axes(area.currentA(), area.timeS()), this::frame);
        pen.canvas().addTemplate(frame, area.left(), area.bottom());
    }

    private PdfTemplate frame(Axes axes) {
        PdfTemplate frame =
                form(
                        -ChartAxes.LEFT - SPARE,
                        -ChartAxes.BELOW - SPARE,
                        plotWidth + ChartAxes.RIGHT + SPARE,
                        PlotArea.HEIGHT + ChartAxes.ABOVE + SPARE);
        PlotArea area = new PlotArea(axes.currentA(), axes.timeS(), 0, 0, plotWidth);
        ChartAxes.draw(new Pen(frame), area, wording);
        return frame;
    }

    private PdfTemplate form(float left, float bottom, float right, float top) {
        PdfTemplate form = canvas.createTemplate(right - left, top - bottom);
        form.setBoundingBox(new Rectangle(left, bottom, right, top));
        return form;
    }
}
