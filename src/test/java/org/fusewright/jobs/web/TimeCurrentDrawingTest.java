package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.sizing.LogAxis;
import org.fusewright.core.sizing.TimeCurrentChart;
import org.fusewright.core.sizing.TimeCurrentChart.Point;
import org.fusewright.core.words.Text;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;

import javax.xml.parsers.DocumentBuilderFactory;

class TimeCurrentDrawingTest {

    private static final TimeCurrentChart CHART =
            new TimeCurrentChart(
                    Text.verbatim("10 A fuse"),
                    "<b>/out, 1 mm2",
                    new LogAxis(0, 3),
                    new LogAxis(-3, 3),
                    List.of(new Point(11, 1000), new Point(20, 0.15), new Point(270, 0.001)),
                    List.of(new Point(13.5, 1000), new Point(13.5, 600), new Point(600, 0.001)),
                    List.of(
                            new Point(26, 0.001),
                            new Point(26, 0.1),
                            new Point(5.2, 0.1),
                            new Point(5.2, 1000)),
                    List.of(new Point(26, 0.1)),
                    List.of(new Point(30, 1000), new Point(1000, 0.01)),
                    new TimeCurrentChart.Fault(574.3, 0.001),
                    new TimeCurrentChart.Fault(152.4, 0.004),
                    Text.verbatim("The 10 A fuse opens & \"so on\"."));

    private static Element draw(TimeCurrentChart chart) throws Exception {
        String svg = TimeCurrentDrawing.draw(chart, "a & <b>", "chart-1");
        Document document =
                DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(new InputSource(new StringReader(svg)));
        return document.getDocumentElement();
    }

    private static List<Element> list(Element root, String tag) {
        NodeList nodes = root.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void tellsWhatItShowsToPeopleWhoDoNotSeeIt() throws Exception {
        Element svg = draw(CHART);

        assertThat(svg.getAttribute("role")).isEqualTo("img");
        Element title = list(svg, "title").getFirst();
        Element text = list(svg, "desc").getFirst();
        assertThat(svg.getAttribute("aria-labelledby")).isEqualTo(title.getAttribute("id"));
        assertThat(svg.getAttribute("aria-describedby")).isEqualTo(text.getAttribute("id"));
        assertThat(title.getTextContent())
                .isEqualTo("Time-current chart of circuit a & <b>, 10 A fuse");
        assertThat(text.getTextContent()).isEqualTo(CHART.description().english());
    }

    @Test
    void labelsItsAxesWithUnitsAndPlainNumbers() throws Exception {
        assertThat(list(draw(CHART), "text"))
                .extracting(Element::getTextContent)
                .containsSequence("1", "10", "100", "1000", "0.001", "0.01", "0.1", "1", "10")
                .contains("Time, s", "Current, A");
    }

    @Test
    void namesEachLineAndMark() throws Exception {
        assertThat(list(draw(CHART), "text"))
                .extracting(Element::getTextContent)
                .contains(
                        "the 10 A fuse may open here",
                        "loads: start 26 A, running 5.2 A",
                        "limit of wire <b>/out, 1 mm2",
                        "dead short at the far end, 152 A",
                        "dead short at the device, 574 A");
    }

    /** The plot is 294 by 240 units from (50, 264) up: 98 units each decade of current. */
    @Test
    void putsPointsWhereTheirDecadesAre() throws Exception {
        Element svg = draw(CHART);

        assertThat(list(svg, "path"))
                .filteredOn(path -> path.getAttribute("class").equals("damage"))
                .extracting(path -> path.getAttribute("d"))
                .contains("M194.8 24L344 224");
        assertThat(list(svg, "path"))
                .filteredOn(path -> path.getAttribute("class").equals("band"))
                .allSatisfy(
                        path ->
                                assertThat(path.getAttribute("fill"))
                                        .isEqualTo("url(#chart-1-hatch)"));
    }

    @Test
    void leavesOutWhatThereIsNot() throws Exception {
        TimeCurrentChart bare =
                new TimeCurrentChart(
                        CHART.device(),
                        CHART.lead(),
                        CHART.currentA(),
                        CHART.timeS(),
                        List.of(),
                        List.of(),
                        List.of(new Point(5, 0.001), new Point(5, 1000)),
                        List.of(),
                        List.of(),
                        CHART.atDevice(),
                        CHART.atFarEnd(),
                        CHART.description());

        assertThat(list(draw(bare), "text"))
                .extracting(Element::getTextContent)
                .contains("loads: running 5 A")
                .noneMatch(text -> text.startsWith("limit of wire"));
        assertThat(list(draw(bare), "path"))
                .extracting(path -> path.getAttribute("d"))
                .noneMatch(String::isEmpty);
    }

    /** A strict content policy allows neither. */
    @Test
    void hasNeitherStylesNorScriptsInIt() {
        assertThat(TimeCurrentDrawing.draw(CHART, "c", "chart-1"))
                .doesNotContain("style=", "<script", "<style")
                .doesNotContainPattern(" on\\w+=");
    }
}
