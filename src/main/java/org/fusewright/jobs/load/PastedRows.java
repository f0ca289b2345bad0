package org.fusewright.jobs.load;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;

import org.fusewright.core.job.LoadKind;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Rows of a spreadsheet, as copied from one (cells parted by tabs), read as circuits.
 *
 * <p>With a heading on top its words say what each column is; else the columns are those of the
 * page, from the one that the paste begins in. What is no number where one belongs stays as it is,
 * for the reader of the job to complain about. A length keeps the unit that it or its heading has;
 * one without is in the reader's.
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

    /**
     * A column of what was pasted.
     *
     * @param name of the field; empty when it belongs nowhere
     * @param unit of its bare numbers, as its heading says; empty for the reader's
     */
    private record Column(String name, String unit) {
        static final Column NONE = new Column("", "");
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
    private static final String RUN = "runM";
    private static final String LINE = "line";
    private static final int MAX_ROWS = 400;

    /** What keeps a spreadsheet from taking a text for a formula. */
    private static final Pattern APOSTROPHE = Pattern.compile("^'(?=[=+\\-@])");

    /** Headings in lower case; a name below a circuit is one too. */
    private static final Map<String, String> HEADINGS = headings();

    /** What the page calls its columns and kinds, in each language. */
    private static final Map<String, LoadKind> KINDS = kinds();

    private static final Set<String> FURTHER_LOAD =
            Set.copyOf(inEachLanguage(List.of("copied.load")));

    private static final Pattern UNIT_OF_HEADING =
            Pattern.compile("(.*[^\\s,])(?:,\\s*| )(m|ft|in|mm|cm)");
    private static final Pattern BARE_NUMBER = Pattern.compile("[+-]?\\d{1,15}([.,]\\d{1,15})?");

    private static List<String> inEachLanguage(List<String> keys) {
        List<String> words = new ArrayList<>();
        for (Language language : Language.values()) {
            Wording wording = new Wording(language, UnitSystem.METRIC);
            keys.forEach(key -> words.add(plain(wording.say(key))));
        }
        return words;
    }

    private static Map<String, LoadKind> kinds() {
        Map<String, LoadKind> kinds = new HashMap<>();
        for (LoadKind kind : LoadKind.values()) {
            inEachLanguage(List.of("load-kind." + kind.code()))
                    .forEach(word -> kinds.put(word, kind));
        }
        return Map.copyOf(kinds);
    }

    private static Map<String, String> headings() {
        Map<String, String> headings = new HashMap<>();
        inEachLanguage(List.of("copied.line")).forEach(word -> headings.put(word, LINE));
        inEachLanguage(List.of("sheet.circuit")).forEach(word -> headings.put(word, "title"));
        inEachLanguage(List.of("sheet.kind")).forEach(word -> headings.put(word, KIND));
        inEachLanguage(List.of("sheet.draws")).forEach(word -> headings.put(word, AMOUNT));
        inEachLanguage(List.of("sheet.unit")).forEach(word -> headings.put(word, UNIT));
        inEachLanguage(List.of("sheet.run")).forEach(word -> headings.put(word, RUN));
        inEachLanguage(List.of("sheet.feed")).forEach(word -> headings.put(word, "feed"));
        inEachLanguage(List.of("sheet.place")).forEach(word -> headings.put(word, "location"));
        List.of("title", "name", "load").forEach(word -> headings.put(word, "title"));
        List.of("type").forEach(word -> headings.put(word, KIND));
        List.of("×", "count", "quantity", "qty").forEach(word -> headings.put(word, COUNT));
        List.of("power", "current").forEach(word -> headings.put(word, AMOUNT));
        List.of("watts", "w").forEach(word -> headings.put(word, "watts"));
        List.of("amps", "a").forEach(word -> headings.put(word, "amps"));
        headings.put("length", RUN);
        headings.put("location", "location");
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
        List<Column> columns =
                COLUMNS.subList(Math.max(0, COLUMNS.indexOf(first)), COLUMNS.size()).stream()
                        .map(name -> new Column(name, ""))
                        .toList();
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
        long known = line.stream().filter(cell -> column(cell).isPresent()).count();
        return known >= 2 || known == 1 && line.size() == 1;
    }

    private static List<Column> columns(List<String> heading, List<Text> leftOver) {
        List<Column> columns = new ArrayList<>();
        for (String cell : heading) {
            Optional<Column> column = column(cell);
            columns.add(column.orElse(Column.NONE));
            if (column.isEmpty() && !cell.isBlank()) {
                leftOver.add(Phrase.of("pasted.column", cell.strip()));
            }
        }
        return columns;
    }

    /** The column of a heading; one of lengths may name their unit. */
    private static Optional<Column> column(String heading) {
        Optional<String> name = Optional.ofNullable(HEADINGS.get(plain(heading)));
        if (name.isPresent()) {
            return name.map(known -> new Column(known, ""));
        }
        Matcher withUnit = UNIT_OF_HEADING.matcher(plain(heading));
        return withUnit.matches()
                ? Optional.ofNullable(HEADINGS.get(withUnit.group(1)))
                        .filter(known -> known.endsWith("M"))
                        .map(known -> new Column(known, withUnit.group(2)))
                : Optional.empty();
    }

    private static String plain(String heading) {
        return heading.strip().toLowerCase(Locale.ROOT);
    }

    private static Row row(List<String> line, List<Column> columns, List<Text> leftOver) {
        Map<String, String> texts = new LinkedHashMap<>();
        boolean load = false;
        for (int i = 0; i < line.size(); i++) {
            String cell = APOSTROPHE.matcher(line.get(i).strip()).replaceFirst("");
            Column column = i < columns.size() ? columns.get(i) : Column.NONE;
            if (column.name().equals(LINE)) {
                load = FURTHER_LOAD.contains(plain(cell));
            } else if (i >= columns.size() && !cell.isEmpty()) {
                leftOver.add(Phrase.of("pasted.cell", cell));
            } else if (!column.name().isEmpty()) {
                boolean bare = BARE_NUMBER.matcher(cell).matches() && !column.unit().isEmpty();
                put(texts, column.name(), bare ? cell + " " + column.unit() : cell);
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
            case RUN ->
                    texts.put(column, WishReader.findMetres(cell).map(m -> m + " m").orElse(cell));
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
        String small = plain(cell);
        return Optional.ofNullable(KINDS.get(small))
                .or(() -> LoadKind.parse(small.replace(' ', '-')))
                .or(() -> LoadWords.find(small).map(LoadWords.Found::kind))
                .map(LoadKind::code)
                .orElse(cell);
    }
}
