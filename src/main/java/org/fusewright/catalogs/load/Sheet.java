package org.fusewright.catalogs.load;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;

import org.fusewright.core.words.Phrase;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;

/**
 * One CSV file (RFC 4180, UTF-8 with or without a byte order mark) with a header row. Columns stand
 * in any order, and every one of them must be there unless it is optional; empty lines are passed
 * over.
 */
final class Sheet {

    static final int MAX_ROWS = 500_000;

    private final String file;
    private final List<String> columns;
    private final Set<String> optionalColumns;
    private final Problems problems;
    private boolean whole = true;

    Sheet(String file, List<String> columns, Set<String> optionalColumns, Problems problems) {
        this.file = file;
        this.columns = columns;
        this.optionalColumns = optionalColumns;
        this.problems = problems;
    }

    /** Whether every row could be handed on. */
    boolean isWhole() {
        return whole;
    }

    void rejectMissing() {
        rejectSheet(0, "", "", "catalog.missing-file");
    }

    private void rejectSheet(long line, String column, String value, String key, Object... values) {
        whole = false;
        problems.add(file, line, column, value, Phrase.of(key, values));
    }

    /** Hands on each row whose cells are as many as the header's. */
    void read(byte[] content, Consumer<Row> consumer) {
        String text;
        try {
            text = decode(content);
        } catch (CharacterCodingException notUtf8) {
            rejectSheet(0, "", "", "catalog.no-utf-8");
            return;
        }
        long line = 0;
        try (CsvReader<CsvRecord> records =
                CsvReader.builder()
                        .skipEmptyLines(true)
                        .allowExtraFields(true)
                        .allowMissingFields(true)
                        .ofCsvRecord(text)) {
            List<String> header = null;
            Map<String, Integer> places = Map.of();
            int rows = 0;
            for (CsvRecord record : records) {
                line = record.getStartingLineNumber();
                List<String> cells = stripped(record.getFields());
                if (header == null) {
                    header = cells;
                    if (!isHeaderRight(header, line)) {
                        return;
                    }
                    places = placesOf(header);
                } else if (++rows > MAX_ROWS) {
                    rejectSheet(line, "", "", "catalog.too-many-rows");
                    return;
                } else if (cells.size() != header.size()) {
                    rejectSheet(
                            line,
                            "",
                            String.join(",", cells),
                            "catalog.cells",
                            header.size(),
                            cells.size());
                } else {
                    consumer.accept(new Row(file, line, places, cells, problems));
                }
            }
            if (header == null) {
                rejectSheet(0, "", "", "catalog.no-header", String.join(",", columns));
            }
        } catch (CsvParseException unreadable) {
            rejectSheet(line + 1, "", "", "catalog.no-csv");
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static String decode(byte[] content) throws CharacterCodingException {
        String text =
                StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(content)).toString();
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    private boolean isHeaderRight(List<String> header, long line) {
        if (header.size() == 1 && header.getFirst().contains(";")) {
            rejectSheet(line, "", header.getFirst(), "catalog.semicolons");
            return false;
        }
        Set<String> seen = new HashSet<>();
        for (String column : header) {
            if (!columns.contains(column)) {
                rejectSheet(
                        line, column, column, "catalog.unknown-column", String.join(", ", columns));
            } else if (!seen.add(column)) {
                rejectSheet(line, column, column, "catalog.column-twice");
            }
        }
        for (String column : columns) {
            if (!header.contains(column) && !optionalColumns.contains(column)) {
                rejectSheet(line, column, "", "catalog.missing-column");
            }
        }
        return whole;
    }

    private static List<String> stripped(List<String> fields) {
        String[] cells = new String[fields.size()];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = fields.get(i).strip();
        }
        return List.of(cells);
    }

    /** An optional column that is not there reads as empty. */
    private Map<String, Integer> placesOf(List<String> header) {
        Map<String, Integer> places = new HashMap<>();
        optionalColumns.forEach(column -> places.put(column, Row.NOWHERE));
        for (int i = 0; i < header.size(); i++) {
            places.put(header.get(i), i);
        }
        return places;
    }
}
