package org.fusewright.jobs.load;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;

import org.fusewright.core.job.LoadKind;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Rows of a spreadsheet, as copied from one (cells parted by tabs), read as circuits.
 *
 * <p>With a heading on top its words say what each column is; else the columns are those of the
 * page, from the one that the paste begins in. What is no number where one belongs stays as it is,
 * for the reader of the job to complain about.
 *
 * @param rows the texts of each row by their names below a circuit, such as "loads/0/kind"
 * @param leftOver cells and columns that belong nowhere
 */
public record PastedRows(List<Row> rows, List<Text> leftOver) {
    /**
     * @param load whether it is a further load of the circuit above, not a circuit
     */
    public record Row(boolean load, Map<String, String> texts) {
        public Row {
            texts = Map.copyOf(texts);
        }
    }

    /** The columns of the page, from left to right. */
    public static final List<String> COLUMNS =
            List.of(
                    "title",
                    "loads/0/kind",
                    "loads/0/count",
                    "loads/0/amount",
                    "loads/0/unit",
                    "runM",
                    "feed",
                    "location");

    private static final String KIND = "loads/0/kind";
    private static final String AMOUNT = "loads/0/amount";
    private static final String UNIT = "loads/0/unit";
    private static final String COUNT = "loads/0/count";
    private static final String LINE = "line";
    private static final String FURTHER_LOAD = "load";
    private static final int MAX_ROWS = 400;

    /** What keeps a spreadsheet from taking a text for a formula. */
    private static final Pattern APOSTROPHE = Pattern.compile("^'(?=[=+\\-@])");

    /** Headings in lower case; a name below a circuit is one too. */
    private static final Map<String, String> HEADINGS = headings();

    private static Map<String, String> headings() {
        Map<String, String> headings = new HashMap<>();
        headings.put(LINE, LINE);
        List.of("circuit", "title", "name", "load").forEach(word -> headings.put(word, "title"));
        List.of("kind", "type").forEach(word -> headings.put(word, KIND));
        List.of("×", "count", "quantity", "qty").forEach(word -> headings.put(word, COUNT));
        List.of("draws", "power", "current").forEach(word -> headings.put(word, AMOUNT));
        List.of("watts", "w").forEach(word -> headings.put(word, "watts"));
        List.of("amps", "a").forEach(word -> headings.put(word, "amps"));
        headings.put("unit", UNIT);
        List.of("run", "run m", "length", "run, m").forEach(word -> headings.put(word, "runM"));
        headings.put("feed", "feed");
        List.of("place", "location").forEach(word -> headings.put(word, "location"));
        List.of(
                        "essential",
                        "returnPath",
                        "colour",
                        "devices",
                        "ratingA",
                        "gauge",
                        "maxDropPercent",
                        "relay/triggerFrom",
                        "relay/triggerM",
                        "relay/groundM",
                        "relay/contactFrom",
                        "loads/0/title",
                        "loads/0/ratedV",
                        "loads/0/branchM",
                        "loads/0/duty",
                        "loads/0/inrush/multiple",
                        "loads/0/inrush/ms")
                .forEach(name -> headings.put(name.toLowerCase(Locale.ROOT), name));
        return Map.copyOf(headings);
    }

    public PastedRows {
        rows = List.copyOf(rows);
        leftOver = List.copyOf(leftOver);
    }

    /**
     * @param first the column that the paste begins in; the first one when it is none of the page's
     */
    public static PastedRows read(String text, String first) {
        List<List<String>> cells = cells(text);
        List<Text> leftOver = new ArrayList<>();
        List<String> columns = COLUMNS.subList(Math.max(0, COLUMNS.indexOf(first)), COLUMNS.size());
        if (!cells.isEmpty() && isHeading(cells.getFirst())) {
            columns = columns(cells.removeFirst(), leftOver);
        }
        if (cells.size() > MAX_ROWS) {
            leftOver.add(Phrase.counted("pasted.more-rows", cells.size() - MAX_ROWS));
            cells = cells.subList(0, MAX_ROWS);
        }
        List<Row> rows = new ArrayList<>();
        for (List<String> line : cells) {
            rows.add(row(line, columns, leftOver));
        }
        return new PastedRows(rows, leftOver);
    }

    private static List<List<String>> cells(String text) {
        List<List<String>> lines = new ArrayList<>();
        try (CsvReader<CsvRecord> records =
                CsvReader.builder().fieldSeparator('\t').skipEmptyLines(true).ofCsvRecord(text)) {
            for (CsvRecord found : records) {
                lines.add(found.getFields());
            }
        } catch (CsvParseException | IOException notQuotedAsATable) {
            lines.clear();
            text.lines().map(line -> List.of(line.split("\t", -1))).forEach(lines::add);
        }
        lines.removeIf(line -> line.stream().allMatch(String::isBlank));
        return lines;
    }

    private static boolean isHeading(List<String> line) {
        long known = line.stream().filter(cell -> HEADINGS.containsKey(plain(cell))).count();
        return known >= 2 || known == 1 && line.size() == 1;
    }

    private static List<String> columns(List<String> heading, List<Text> leftOver) {
        List<String> columns = new ArrayList<>();
        for (String cell : heading) {
            columns.add(HEADINGS.getOrDefault(plain(cell), ""));
            if (!HEADINGS.containsKey(plain(cell)) && !cell.isBlank()) {
                leftOver.add(Phrase.of("pasted.column", cell.strip()));
            }
        }
        return columns;
    }

    private static String plain(String heading) {
        return heading.strip().toLowerCase(Locale.ROOT);
    }

    private static Row row(List<String> line, List<String> columns, List<Text> leftOver) {
        Map<String, String> texts = new LinkedHashMap<>();
        boolean load = false;
        for (int i = 0; i < line.size(); i++) {
            String cell = APOSTROPHE.matcher(line.get(i).strip()).replaceFirst("");
            String column = i < columns.size() ? columns.get(i) : "";
            if (column.equals(LINE)) {
                load = cell.equalsIgnoreCase(FURTHER_LOAD);
            } else if (i >= columns.size() && !cell.isEmpty()) {
                leftOver.add(Phrase.of("pasted.cell", cell));
            } else if (!column.isEmpty()) {
                put(texts, column, cell);
            }
        }
        return new Row(load, texts);
    }

    private static void put(Map<String, String> texts, String column, String cell) {
        switch (column) {
            case "watts", "amps" -> {
                if (!cell.isEmpty()) {
                    texts.put(AMOUNT, cell);
                    texts.put(UNIT, column.equals("watts") ? "W" : "A");
                }
            }
            case AMOUNT -> {
                Optional<List<String>> amount = WishReader.findAmount(cell);
                texts.put(AMOUNT, amount.map(List::getFirst).orElse(cell));
                amount.ifPresent(found -> texts.put(UNIT, found.getLast()));
            }
            case UNIT -> {
                if (!cell.isEmpty()) {
                    texts.put(UNIT, unit(cell));
                }
            }
            case KIND -> texts.put(KIND, kind(cell));
            case "runM" -> texts.put(column, WishReader.findMetres(cell).orElse(cell));
            default -> texts.put(column, cell);
        }
    }

    private static String unit(String cell) {
        return switch (cell.toLowerCase(Locale.ROOT)) {
            case "w", "watt", "watts" -> "W";
            case "a", "amp", "amps" -> "A";
            default -> cell;
        };
    }

    private static String kind(String cell) {
        String small = cell.toLowerCase(Locale.ROOT);
        return LoadKind.parse(small.replace(' ', '-'))
                .or(() -> LoadWords.find(small).map(LoadWords.Found::kind))
                .map(LoadKind::code)
                .orElse(cell);
    }
}
