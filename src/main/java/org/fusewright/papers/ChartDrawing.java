package org.fusewright.papers;

import org.fusewright.core.sizing.TimeCurrentChart;
import org.fusewright.core.sizing.TimeCurrentChart.Point;

import java.util.List;

/** The plot of a time-current chart with its axes. */
final class ChartDrawing {

    static final float HEIGHT = ChartAxes.ABOVE + PlotArea.HEIGHT + ChartAxes.BELOW;

    private final Pen pen;
    private final ChartForms forms;
    private final ChartPen chartPen;
    private final TimeCurrentChart chart;
    private final PlotArea area;

    ChartDrawing(Pen pen, ChartForms forms, TimeCurrentChart chart, float left, float top) {
        this.pen = pen;
        this.forms = forms;
        this.chart = chart;
        chartPen = new ChartPen(pen);
        area =
                new PlotArea(
                        chart.currentA(),
                        chart.timeS(),
                        left + ChartAxes.LEFT,
                        top - ChartAxes.ABOVE - PlotArea.HEIGHT,
                        forms.plotWidth());
    }

    void draw() {
        List<Point> outline = chart.band();
        if (!outline.isEmpty()) {
            chartPen.inside(area.places(outline), forms.hatch(), area.left(), area.bottom());
        }
        forms.placeAxes(pen, area);
        curve(ChartPen.Line.DEVICE, chart.earliest());
        curve(ChartPen.Line.DEVICE, chart.latest());
        curve(ChartPen.Line.WIRE, chart.damage());
        curve(ChartPen.Line.LOADS, chart.demand());
        for (Point start : chart.starts()) {
            chartPen.diamond(area.x(start.currentA()), area.y(start.seconds()));
        }
        float farX = area.x(chart.atFarEnd().currentA());
        chartPen.draw(ChartPen.Line.FAR, farX, area.bottom(), farX, area.top());
        chartPen.hangingMark(farX, area.top());
        float nearX = area.x(chart.atDevice().currentA());
        chartPen.draw(ChartPen.Line.NEAR, nearX, area.bottom(), nearX, area.top());
        chartPen.standingMark(nearX, area.bottom());
    }

    private void curve(ChartPen.Line line, List<Point> points) {
        if (!points.isEmpty()) {
            chartPen.draw(line, area.places(points));
        }
    }
}
