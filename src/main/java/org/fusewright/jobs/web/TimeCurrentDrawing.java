package org.fusewright.jobs.web;

import org.fusewright.core.sizing.LogAxis;
import org.fusewright.core.sizing.TimeCurrentChart;
import org.fusewright.core.sizing.TimeCurrentChart.Point;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.util.List;

/**
 * Draws a time-current chart as SVG, with its description as title and text. What belongs to what
 * is told by dashes, hatching and marks; the colours of the style sheet only help.
 */
public final class TimeCurrentDrawing {
    private static final int WIDTH = 360;
    private static final int LEFT = 50;
    private static final int RIGHT = WIDTH - 16;
    private static final int TOP = 24;
    private static final int BOTTOM = 264;
    private static final int LEGEND = 318;
    private static final int LINE = 17;
    private static final int SAMPLE = 30;
    private static final int TICK = 4;
    private static final int MARK = 5;
    private static final int LONGEST_LEAD = 30;

    private final StringBuilder svg = new StringBuilder(6000);
    private final TimeCurrentChart chart;
    private final String id;
    private int legendY = LEGEND;

    private TimeCurrentDrawing(TimeCurrentChart chart, String id) {
        this.chart = chart;
        this.id = id;
    }

    /**
     * The drawing as an element to stand in a page; all text in it is escaped.
     *
     * @param id one of its own on the page
     */
    public static String draw(TimeCurrentChart chart, String circuit, String id) {
        return new TimeCurrentDrawing(chart, id).draw(circuit);
    }

    private String draw(String circuit) {
        int height = LEGEND + LINE * (chart.damage().isEmpty() ? 4 : 5);
        svg.append(
                "<svg class=\"chart\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s-title\" aria-describedby=\"%s-text\">"
                        .formatted(WIDTH, height, id, id));
        svg.append(
                "<title id=\"%s-title\">%s</title>"
                        .formatted(id, escaped(Words.say("chart.title", circuit, chart.device()))));
        svg.append(
                "<desc id=\"%s-text\">%s</desc>"
                        .formatted(id, escaped(Words.say(chart.description()))));
        svg.append(
                "<pattern id=\"%s-hatch\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\"><rect class=\"tint\" width=\"5\" height=\"5\"/><path class=\"hatch\" d=\"M-1 1l2 -2M0 5l5 -5M4 6l2 -2\"/></pattern>"
                        .formatted(id));
        area(chart.band());
        grid();
        curve("edge", chart.earliest());
        curve("edge", chart.latest());
        curve("damage", chart.damage());
        curve("demand", chart.demand());
        chart.starts().forEach(start -> diamond(x(start.currentA()), y(start.seconds())));
        shorts();
        axes();
        legend();
        return svg.append("</svg>").toString();
    }

    private void area(List<Point> outline) {
        if (!outline.isEmpty()) {
            path("band", outline);
            // In the page's own words, as a reference to a pattern cannot stand in its style sheet.
            svg.append(" fill=\"url(#%s-hatch)\"/>".formatted(id));
        }
    }

    private void curve(String kind, List<Point> points) {
        if (!points.isEmpty()) {
            path(kind, points);
            svg.append("/>");
        }
    }

    private void path(String kind, List<Point> points) {
        svg.append("<path class=\"").append(kind).append("\" d=\"");
        char step = 'M';
        for (Point point : points) {
            svg.append(step).append(n(x(point.currentA())));
            svg.append(' ').append(n(y(point.seconds())));
            step = 'L';
        }
        svg.append('"');
    }

    /** Lines at decades, ticks between. */
    private void grid() {
        LogAxis currentA = chart.currentA();
        LogAxis timeS = chart.timeS();
        StringBuilder ticks = new StringBuilder();
        svg.append("<path class=\"grid\" d=\"");
        for (int decade = currentA.from(); decade <= currentA.to(); decade++) {
            svg.append("M%s %dV%d".formatted(n(x(currentA.valueAt(decade))), TOP, BOTTOM));
            for (int times = 2; times < 10 && decade < currentA.to(); times++) {
                String x = n(x(times * currentA.valueAt(decade)));
                ticks.append("M%s %dv-%d".formatted(x, BOTTOM, TICK));
            }
        }
        for (int decade = timeS.from(); decade <= timeS.to(); decade++) {
            svg.append("M%d %sH%d".formatted(LEFT, n(y(timeS.valueAt(decade))), RIGHT));
            for (int times = 2; times < 10 && decade < timeS.to(); times++) {
                String y = n(y(times * timeS.valueAt(decade)));
                ticks.append("M%d %sh%d".formatted(LEFT, y, TICK));
            }
        }
        svg.append("\"/><path class=\"ticks\" d=\"").append(ticks).append("\"/>");
    }

    private void shorts() {
        double farX = x(chart.atFarEnd().currentA());
        double nearX = x(chart.atDevice().currentA());
        upright("far", farX);
        triangle("far-mark", farX, TOP, TOP + 2 * MARK);
        upright("near", nearX);
        triangle("near-mark", nearX, BOTTOM, BOTTOM - 2 * MARK);
    }

    private void upright(String kind, double x) {
        svg.append("<path class=\"%s\" d=\"M%s %dV%d\"/>".formatted(kind, n(x), TOP, BOTTOM));
    }

    private void triangle(String kind, double x, double baseY, double tipY) {
        svg.append(
                "<path class=\"%s\" d=\"M%s %sh%dL%s %sz\"/>"
                        .formatted(kind, n(x - MARK), n(baseY), 2 * MARK, n(x), n(tipY)));
    }

    private void diamond(double x, double y) {
        svg.append(
                "<path class=\"start-mark\" d=\"M%s %sl%d %dl-%d %dl-%d -%dz\"/>"
                        .formatted(n(x), n(y - MARK), MARK, MARK, MARK, MARK, MARK, MARK));
    }

    private void axes() {
        svg.append(
                "<path class=\"frame\" d=\"M%d %dV%dH%dV%dz\"/>"
                        .formatted(LEFT, TOP, BOTTOM, RIGHT, TOP));
        LogAxis currentA = chart.currentA();
        for (int decade = currentA.from(); decade <= currentA.to(); decade++) {
            text(x(currentA.valueAt(decade)), BOTTOM + 15, "middle", currentA.labelAt(decade));
        }
        LogAxis timeS = chart.timeS();
        for (int decade = timeS.from(); decade <= timeS.to(); decade++) {
            text(LEFT - 5, y(timeS.valueAt(decade)) + 4, "end", timeS.labelAt(decade));
        }
        text(LEFT - 5, TOP - 12, "start", Words.say("chart.time"));
        text((LEFT + RIGHT) / 2.0, BOTTOM + 31, "middle", Words.say("chart.current"));
    }

    private void legend() {
        svg.append(
                "<rect class=\"band\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"10\" fill=\"url(#%s-hatch)\"/>"
                        .formatted(LEFT, legendY - 9, SAMPLE, id));
        edgeSample(legendY - 9);
        edgeSample(legendY + 1);
        entry(Words.say("chart.band", chart.device()));
        sample("demand");
        String running = amperes(chart.demand().getLast().currentA());
        if (chart.starts().isEmpty()) {
            entry(Words.say("chart.loads", running));
        } else {
            diamond(LEFT + SAMPLE / 2.0, legendY - 4);
            String start = amperes(chart.starts().getFirst().currentA());
            entry(Words.say("chart.loads-starting", start, running));
        }
        if (!chart.damage().isEmpty()) {
            sample("damage");
            entry(Words.say("chart.wire-limit", shortened(chart.lead())));
        }
        sample("far");
        triangle("far-mark", LEFT + SAMPLE / 2.0, legendY - 9, legendY + 1);
        entry(Words.say("chart.far-short", amperes(chart.atFarEnd().currentA())));
        sample("near");
        triangle("near-mark", LEFT + SAMPLE / 2.0, legendY + 1, legendY - 9);
        entry(Words.say("chart.near-short", amperes(chart.atDevice().currentA())));
    }

    private void sample(String kind) {
        svg.append(
                "<path class=\"%s\" d=\"M%d %dh%d\"/>".formatted(kind, LEFT, legendY - 4, SAMPLE));
    }

    private void edgeSample(int y) {
        svg.append("<path class=\"edge\" d=\"M%d %dh%d\"/>".formatted(LEFT, y, SAMPLE));
    }

    private void entry(String words) {
        text(LEFT + SAMPLE + 8, legendY, "start", words);
        legendY += LINE;
    }

    private void text(double x, double y, String anchor, String words) {
        svg.append(
                "<text x=\"%s\" y=\"%s\" text-anchor=\"%s\">%s</text>"
                        .formatted(n(x), n(y), anchor, escaped(words)));
    }

    private double x(double currentA) {
        return LEFT + chart.currentA().share(currentA) * (RIGHT - LEFT);
    }

    private double y(double seconds) {
        return BOTTOM - chart.timeS().share(seconds) * (BOTTOM - TOP);
    }

    private static String amperes(double currentA) {
        return Figures.short3(currentA) + " A";
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_LEAD ? name : name.substring(0, LONGEST_LEAD - 1) + "…";
    }

    private static String n(double value) {
        return org.fusewright.core.quantity.Figures.of(value, 1);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
