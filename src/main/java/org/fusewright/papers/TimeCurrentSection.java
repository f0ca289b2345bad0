package org.fusewright.papers;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.sizing.ProtectionStudy;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.TimeCurrentChart;

import java.util.ArrayList;
import java.util.List;

/**
 * A time-current chart for each device of a circuit, two beside each other, each told in words
 * below it. The legend stands on every page.
 */
final class TimeCurrentSection {

    private static final String TITLE = "print.chart.title";
    private static final int COLUMNS = 2;
    private static final float GAP = 18;
    private static final float BELOW_CHART = 3;
    private static final float BELOW = 11;

    private final Sheet sheet;
    private final Kit kit;
    private final Table.Heading heading;
    private final float width;

    TimeCurrentSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        heading = Headings.section(sheet, sheet.say(TITLE));
        width = (sheet.width() - GAP * (COLUMNS - 1)) / COLUMNS;
    }

    /** A chart with its heading and the lines below it. */
    private record Entry(String title, TimeCurrentChart chart, List<String> caption) {

        float height() {
            return Style.STRONG.leading()
                    + ChartDrawing.HEIGHT
                    + BELOW_CHART
                    + caption.size() * Style.SMALL.leading();
        }
    }

    void print() {
        List<Entry> entries = new ArrayList<>();
        for (KitCircuit circuit : kit.circuits()) {
            SizedCircuit sized = circuit.sized();
            sized.study().ifPresent(study -> entries.add(entry(sized, study)));
        }
        if (entries.isEmpty()) {
            return;
        }
        ChartForms forms = new ChartForms(sheet, width);
        for (int from = 0; from < entries.size(); from += COLUMNS) {
            printRow(
                    forms,
                    entries.subList(from, Math.min(from + COLUMNS, entries.size())),
                    from == 0);
        }
    }

    private Entry entry(SizedCircuit sized, ProtectionStudy study) {
        TimeCurrentChart chart = study.chart();
        String title = sized.resolved().circuit().title() + " · " + sized.id();
        return new Entry(
                Style.STRONG.clip(title, width),
                chart,
                Style.SMALL.wrap(sheet.say(chart.description()), width));
    }

    private void printRow(ChartForms forms, List<Entry> row, boolean first) {
        float height = 0;
        for (Entry entry : row) {
            height = Math.max(height, entry.height());
        }
        if (first) {
            sheet.keep(Math.min(headHeight() + height, sheet.pageRoom()));
            printHead(forms, false);
        } else if (sheet.room() < height) {
            sheet.newPage();
            printHead(forms, true);
        }
        float x = sheet.left();
        for (Entry entry : row) {
            print(forms, entry, x);
            x += width + GAP;
        }
        sheet.down(height + BELOW);
    }

    private float headHeight() {
        return heading.height() + ChartLegend.HEIGHT;
    }

    private void printHead(ChartForms forms, boolean continued) {
        heading.draw(continued);
        forms.placeLegend(sheet.pen(), sheet.left(), sheet.y());
        sheet.down(ChartLegend.HEIGHT);
    }

    private void print(ChartForms forms, Entry entry, float x) {
        Pen pen = sheet.pen();
        float y = sheet.y();
        pen.text(Style.STRONG, entry.title(), x, y - Style.STRONG.ascent());
        y -= Style.STRONG.leading();
        new ChartDrawing(pen, forms, entry.chart(), x, y).draw();
        y -= ChartDrawing.HEIGHT + BELOW_CHART;
        for (String line : entry.caption()) {
            pen.text(Style.SMALL, line, x, y - Style.SMALL.ascent());
            y -= Style.SMALL.leading();
        }
    }
}
