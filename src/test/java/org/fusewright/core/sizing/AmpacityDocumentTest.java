package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.NamedCsvRecord;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The tables of {@code src/docs/ampacity.md} are what the code computes. When they are not, the
 * document as it should be is left in {@code target/ampacity.md}.
 */
class AmpacityDocumentTest {

    private static final Path DOCUMENT = Path.of("src/docs/ampacity.md");
    private static final Path REGENERATED = Path.of("target/ampacity.md");
    private static final Pattern TABLE =
            Pattern.compile("<!-- table: ([a-z0-9-]+) -->\n.*?<!-- end -->", Pattern.DOTALL);

    private int entries;
    private int overTheLower;
    private double leastRatio = Double.POSITIVE_INFINITY;
    private double mostRatio;

    @Test
    void printsWhatTheCodeComputes() throws IOException {
        Map<String, String> tables = new TreeMap<>();
        tables.put("cfr", boats());
        tables.put("iso", small());
        tables.put("lower", againstTheLower());
        tables.put("nec", buildings());
        tables.put("aircraft", aircraft());

        String written = Files.readString(DOCUMENT);
        Matcher places = TABLE.matcher(written);
        String expected =
                places.replaceAll(
                        place ->
                                Matcher.quoteReplacement(
                                        "<!-- table: "
                                                + place.group(1)
                                                + " -->\n"
                                                + tables.remove(place.group(1))
                                                + "<!-- end -->"));
        Files.writeString(REGENERATED, expected);

        assertThat(tables).as("tables without a place").isEmpty();
        assertThat(written).isEqualTo(expected);
    }

    private String boats() {
        List<String> columns =
                List.of("A_60C", "A_75C", "A_80C", "A_90C", "A_105C", "A_125C", "A_200C");
        return table("cfr33_183_425_table5", "awg", "AWG", columns);
    }

    private String small() {
        List<String> columns = List.of("A_60C", "A_70C", "A_85_90C", "A_105C", "A_125C", "A_200C");
        return table("iso10133_ampacity", "mm2", "mm2", columns);
    }

    private String againstTheLower() {
        return say(
                "%d of the %d entries lie over 5 %% above the lower of both tables; ours divided by"
                        + " the lower runs\nfrom %.2f to %.2f.\n",
                overTheLower, entries, leastRatio, mostRatio);
    }

    private String buildings() {
        return table("nec_310_17_free_air", "awg", "AWG", List.of("A_60C", "A_75C", "A_90C"));
    }

    /** An entry: published, ours, ratio; marked where ours is over 5 % above. */
    private String table(String facts, String key, String heading, List<String> columns) {
        StringBuilder text = new StringBuilder("| " + heading + " |");
        columns.forEach(column -> text.append(' ').append(title(column)).append(" |"));
        text.append("\n| --- |").append(" --- |".repeat(columns.size())).append('\n');
        for (NamedCsvRecord row : FactRows.of(facts)) {
            text.append("| ").append(row.getField(key)).append(" |");
            for (String column : columns) {
                text.append(' ').append(cell(row, key, column)).append(" |");
            }
            text.append('\n');
        }
        return text.toString();
    }

    private String cell(NamedCsvRecord row, String key, String column) {
        if (row.getField(column).isEmpty()) {
            return "";
        }
        double classC = classC(column);
        double copperMm2 =
                key.equals("mm2")
                        ? FactRows.number(row, key)
                        : WireSize.parse(row.getField(key) + " AWG").orElseThrow().areaMm2();
        Wire wire = PublishedAmpacities.boatWire(copperMm2, classC);
        double publishedA = FactRows.number(row, column);
        double oursA = WireHeat.of(wire, TestLeads.in(30, 1)).ampacityA();
        double ofTheLower = oursA / Ampacity.conservativeA(copperMm2, new Celsius(classC));
        entries++;
        overTheLower += ofTheLower > 1.05 ? 1 : 0;
        leastRatio = Math.min(leastRatio, ofTheLower);
        mostRatio = Math.max(mostRatio, ofTheLower);
        double ratio = oursA / publishedA;
        return say("%s %.1f %.2f%s", row.getField(column), oursA, ratio, ratio > 1.05 ? "*" : "");
    }

    private static double classC(String column) {
        return Double.parseDouble(column.replaceAll("\\D*(\\d+).*", "$1"));
    }

    private static String title(String column) {
        return column.substring(2).replace("_", " to ").replace("C", " C");
    }

    /** The free-air points of AC 43.13-1B, its wire as in the test of them. */
    private static String aircraft() {
        StringBuilder text =
                new StringBuilder("| No. | above ambient | published | ours | ratio |\n");
        text.append("| --- | --- | --- | --- | --- |\n");
        WireHeatTest.freeAirPoints()
                .map(point -> Arrays.asList(point.get()))
                .forEach(
                        point -> {
                            String gauge = (String) point.get(0);
                            double riseK = (double) point.get(1);
                            double publishedA = (double) point.get(2);
                            double oursA =
                                    WireHeat.of(
                                                    WireHeatTest.aircraftWire(gauge, 200),
                                                    TestLeads.in(200 - riseK, 1))
                                            .ampacityA();
                            text.append(
                                    say(
                                            "| %s | %.0f K | %.1f A | %.1f A | %.2f |\n",
                                            gauge, riseK, publishedA, oursA, oursA / publishedA));
                        });
        return text.toString();
    }

    private static String say(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
