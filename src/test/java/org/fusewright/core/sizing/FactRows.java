package org.fusewright.core.sizing;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;

/** Rows of a published table, kept as test resource with the standing of each row beside it. */
final class FactRows {

    private FactRows() {}

    static List<NamedCsvRecord> of(String table) {
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder()
                        .ofNamedCsvRecord(Path.of("src/test/resources/facts", table + ".csv"))) {
            return rows.stream().toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static double number(NamedCsvRecord row, String column) {
        return Double.parseDouble(row.getField(column));
    }
}
