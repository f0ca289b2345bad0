package org.fusewright.papers;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;

import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * An order's lines as CSV (RFC 4180). Texts that a spreadsheet could take for formulas are defused;
 * numbers are numbers.
 */
public final class PurchaseOrderTable {
    private PurchaseOrderTable() {}

    /** The table in UTF-8, with a header row; it ends with the total. */
    public static byte[] print(PurchaseOrder order) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text);
        csv.writeRecord(
                "order",
                "line",
                "part",
                "title",
                "quantity",
                "unit",
                "packs",
                "packSize",
                "unitPrice",
                "price",
                "currency");
        for (OrderLine line : order.lines()) {
            csv.writeRecord(
                    Spreadsheet.defused(order.number()),
                    Integer.toString(line.line()),
                    Spreadsheet.defused(line.part().value()),
                    Spreadsheet.defused(line.title()),
                    Integer.toString(line.quantity()),
                    line.unit(),
                    Integer.toString(line.quantity() / line.packSize()),
                    Integer.toString(line.packSize()),
                    line.unitPrice().getAmount().toPlainString(),
                    Amounts.forTable(line.price()),
                    order.currency().getCode());
        }
        csv.writeRecord(
                Spreadsheet.defused(order.number()),
                "",
                "",
                "Total",
                "",
                "",
                "",
                "",
                "",
                Amounts.forTable(order.total()),
                order.currency().getCode());
        try {
            csv.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
