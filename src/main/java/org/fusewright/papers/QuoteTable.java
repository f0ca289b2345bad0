package org.fusewright.papers;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;

import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteLine;
import org.fusewright.core.quote.Variant;
import org.joda.money.Money;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * A quote's lines as CSV (RFC 4180), as the customer may see them. Texts that a spreadsheet could
 * take for formulas are defused; numbers are numbers.
 */
public final class QuoteTable {
    private QuoteTable() {}

    /** The table in UTF-8, with a header row; each variant ends with its sums. */
    public static byte[] print(Quote quote) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text);
        csv.writeRecord(
                "quote",
                "revision",
                "variant",
                "kind",
                "group",
                "code",
                "title",
                "quantity",
                "unit",
                "unitPrice",
                "per",
                "price",
                "currency");
        for (Variant variant : quote.variants()) {
            variant.lines().forEach(line -> write(csv, quote, variant, line));
            writeSum(csv, quote, variant, "net", "Before tax", variant.net());
            writeSum(csv, quote, variant, "tax", "Tax", variant.tax());
            writeSum(csv, quote, variant, "total", "Total", variant.total());
        }
        try {
            csv.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void write(CsvWriter csv, Quote quote, Variant variant, QuoteLine line) {
        csv.writeRecord(
                Spreadsheet.defused(quote.number()),
                Integer.toString(quote.revision()),
                variant.kind().code(),
                line.kind().code(),
                line.group(),
                Spreadsheet.defused(line.code()),
                Spreadsheet.defused(line.title()),
                line.quantity().toPlainString(),
                line.unit(),
                line.unitPrice().getAmount().toPlainString(),
                Integer.toString(line.per()),
                Amounts.forTable(line.price()),
                quote.currency().getCode());
    }

    private static void writeSum(
            CsvWriter csv, Quote quote, Variant variant, String kind, String title, Money amount) {
        csv.writeRecord(
                Spreadsheet.defused(quote.number()),
                Integer.toString(quote.revision()),
                variant.kind().code(),
                kind,
                "",
                "",
                title,
                "",
                "",
                "",
                "",
                Amounts.forTable(amount),
                quote.currency().getCode());
    }
}
