package org.fusewright.counts.load;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Phrase;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads a kit from elsewhere: CSV (RFC 4180) with a header row that names the columns {@code part}
 * and {@code quantity}; other columns are passed over. A part that stands on several rows is added
 * up.
 */
public final class KitFile {
    private static final String PART = "part";
    private static final String QUANTITY = "quantity";
    private static final int MOST_ROWS = 20_000;
    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000);
    private static final int MOST_DECIMALS = 3;
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final String pointer;
    private final List<JobProblem> problems = new ArrayList<>();
    private final Map<PartNumber, BigDecimal> found = new LinkedHashMap<>();
    private int partColumn = -1;
    private int quantityColumn = -1;

    private KitFile(String pointer) {
        this.pointer = pointer;
    }

    /**
     * Reads pieces, or metres of wire, of each part.
     *
     * @param pointer of the text in what was sent
     * @throws MalformedJobException with all that is wrong, each with its line
     */
    public static Map<PartNumber, BigDecimal> read(String csv, String pointer) {
        KitFile file = new KitFile(pointer);
        file.read(csv);
        if (!file.problems.isEmpty()) {
            throw new MalformedJobException(file.problems);
        }
        return file.found;
    }

    private void read(String csv) {
        String text = csv.startsWith(BYTE_ORDER_MARK) ? csv.substring(1) : csv;
        boolean header = true;
        int rows = 0;
        try (CsvReader<CsvRecord> records =
                CsvReader.builder()
                        .skipEmptyLines(true)
                        .allowExtraFields(true)
                        .allowMissingFields(true)
                        .ofCsvRecord(text)) {
            for (CsvRecord record : records) {
                if (header) {
                    header = false;
                    readHeader(record);
                    if (!problems.isEmpty()) {
                        return;
                    }
                } else if (++rows > MOST_ROWS) {
                    problems.add(JobProblem.of(pointer, "kit-file.too-long"));
                    return;
                } else {
                    readRow(record);
                }
            }
        } catch (CsvParseException e) {
            problems.add(JobProblem.of(pointer, "kit-file.no-csv"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (header) {
            problems.add(JobProblem.of(pointer, "kit-file.empty"));
        }
    }

    private void readHeader(CsvRecord record) {
        List<String> names = record.getFields().stream().map(String::strip).toList();
        partColumn = names.indexOf(PART);
        quantityColumn = names.indexOf(QUANTITY);
        for (String column : List.of(PART, QUANTITY)) {
            if (!names.contains(column)) {
                problems.add(JobProblem.of(pointer, "kit-file.no-column", column));
            }
        }
    }

    private void readRow(CsvRecord record) {
        long line = record.getStartingLineNumber();
        String part = cell(record, partColumn);
        String quantity = cell(record, quantityColumn);
        boolean isPart = PartNumber.isOne(part);
        if (!isPart) {
            report(line, PART, part, "kit-file.no-part");
        }
        BigDecimal number = parse(quantity);
        if (number.signum() < 0) {
            report(line, QUANTITY, quantity, "kit-file.no-quantity");
        }
        if (isPart && number.signum() >= 0) {
            found.merge(new PartNumber(part), number, BigDecimal::add);
        }
    }

    private static String cell(CsvRecord record, int column) {
        return column < record.getFieldCount() ? record.getField(column).strip() : "";
    }

    /** Negative for what is no quantity. */
    private static BigDecimal parse(String quantity) {
        if (!quantity.matches("[0-9]{1,7}(\\.[0-9]{1," + MOST_DECIMALS + "}0*)?")) {
            return BigDecimal.ONE.negate();
        }
        BigDecimal number = new BigDecimal(quantity);
        return number.compareTo(MOST) > 0 ? BigDecimal.ONE.negate() : number;
    }

    private void report(long line, String column, String value, String key) {
        problems.add(JobProblem.of(pointer, "kit-file.at", line, column, value, Phrase.of(key)));
    }
}
