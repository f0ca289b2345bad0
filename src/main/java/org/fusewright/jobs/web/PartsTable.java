package org.fusewright.jobs.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartLine;
import org.fusewright.papers.Spreadsheet;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * Writes a kit's parts list as CSV (RFC 4180). A text that a spreadsheet could take for a formula
 * gets a leading apostrophe.
 */
public final class PartsTable {
    private PartsTable() {}

    /** The table in UTF-8, with a header row. */
    public static byte[] print(Kit kit) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text);
        csv.writeRecord(
                "group",
                "part",
                "title",
                "quantity",
                "unit",
                "unitPrice",
                "extended",
                "massG",
                "usedAt");
        for (PartLine line : kit.parts()) {
            csv.writeRecord(
                    line.group().code(),
                    Spreadsheet.defused(line.part().number().value()),
                    Spreadsheet.defused(line.part().title()),
                    line.quantity().stripTrailingZeros().toPlainString(),
                    line.unit(),
                    kit.priced() ? line.unitPrice().getAmount().toPlainString() : "",
                    kit.priced() ? line.extended().getAmount().toPlainString() : "",
                    Double.toString(Math.rint(line.massG() * 1e4) / 1e4),
                    Spreadsheet.defused(String.join("; ", line.usedAt())));
        }
        try {
            csv.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
