package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;

import org.fusewright.core.job.Job;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.QuoteLine;
import org.fusewright.core.quote.SampleQuotes;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The quote as the customer gets it, read back by libraries that did not write it. */
class QuotePaperTest {
    private static final Quote QUOTE =
            SampleQuotes.quad(3, VariantKind.AS_ASKED, VariantKind.FUSES, VariantKind.CHEAPEST);

    private static byte[] print(Quote quote, Paper paper) {
        return QuotePaper.print(quote, Optional.empty(), false, paper, Wording.ENGLISH);
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void printsEveryNumberOfEachVariant(Paper paper) {
        try (PrintedPaper printed = PrintedPaper.of(print(QUOTE, paper))) {
            String text = printed.denseText();
            for (Variant variant : QUOTE.variants()) {
                for (QuoteLine line : variant.lines()) {
                    assertThat(text)
                            .contains(
                                    line.code(),
                                    PrintedPaper.dense(line.title()),
                                    line.quantity().toPlainString(),
                                    line.unitPrice().getAmount().toPlainString(),
                                    line.price().getAmount().toPlainString());
                }
                assertThat(text)
                        .contains(
                                "Beforetax" + variant.net().getAmount(),
                                "Tax20%" + variant.tax().getAmount(),
                                "Total" + variant.total().getAmount());
                variant.warnings()
                        .forEach(warning -> assertThat(text).contains(PrintedPaper.dense(warning)));
            }
            assertThat(text)
                    .contains(
                            "Validuntil2026-04-01,thatdayincluded",
                            "QuoteQ-2026-0007,revision1,of2026-03-02.3equalkits;allamountsinEUR.",
                            "JobTQ-014,revision4:Trailpatrolquad,forHighmoorTrails.",
                            QUOTE.fingerprint(),
                            "Payablewithin14daysofdelivery.",
                            "Fittingthekittothemachine.");
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void carriesTheCautionsAndNamesItselfOnEachPage(Paper paper) {
        try (PrintedPaper printed = PrintedPaper.of(print(QUOTE, paper))) {
            CautionsSection.CAUTIONS.forEach(
                    caution ->
                            assertThat(printed.denseText())
                                    .contains(PrintedPaper.dense(Wording.ENGLISH.say(caution))));
            assertThat(printed.pages()).isGreaterThan(1);
            for (int page = 1; page <= printed.pages(); page++) {
                assertThat(printed.text(page))
                        .contains("Q-2026-0007, revision 1")
                        .contains("Page " + page + " of " + printed.pages())
                        .contains(
                                "Fingerprint "
                                        + KitHeading.grouped(QUOTE.fingerprint().substring(0, 12)));
            }
        }
    }

    @Test
    void tellsTheCustomerNothingOfCostsAndSuppliers() {
        try (PrintedPaper printed = PrintedPaper.of(print(QUOTE, Paper.A4))) {
            assertThat(printed.text())
                    .doesNotContain("SKERROW", "OLDQUAY", "DUNNOCK", "mark-up", "Cost", "cost");
        }
        String table = new String(QuoteTable.print(QUOTE), StandardCharsets.UTF_8);
        assertThat(table).doesNotContain("SKERROW", "OLDQUAY", "DUNNOCK", "markUp", "cost");
    }

    @Test
    void saysThatADraftIsNoOffer() {
        byte[] draft = QuotePaper.print(QUOTE, Optional.empty(), true, Paper.A4, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(draft)) {
            assertThat(printed.text())
                    .contains("Draft: not an offer yet")
                    .doesNotContain("that day included");
        }
    }

    @Test
    void printsWhatARevisionChanges() {
        Job job = SampleQuotes.job("01-trail-quad");
        Quote older = SampleQuotes.quad(1, VariantKind.FUSES);
        Quote newer = SampleQuotes.of(2, job, SampleQuotes.wishes(2, VariantKind.FUSES));
        QuoteChanges changes = QuoteChanges.between(older, newer);
        byte[] pdf =
                QuotePaper.print(newer, Optional.of(changes), false, Paper.A4, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            String text = printed.denseText();
            assertThat(text).contains("Changedsincerevision1", "Kits12");
            assertThat(changes.lines()).hasSizeGreaterThan(10);
            changes.lines()
                    .forEach(
                            line ->
                                    assertThat(text)
                                            .contains(
                                                    figures(line.before().orElseThrow())
                                                            + figures(line.after().orElseThrow())));
        }
    }

    private static String figures(QuoteLine line) {
        String metres = line.unit().equals("m") ? "m" : line.unit().equals("min") ? "min" : "";
        String per = line.per() == 60 ? "/h" : line.unit().equals("m") ? "/m" : "";
        return PrintedPaper.dense(
                line.price().getAmount()
                        + line.quantity().toPlainString()
                        + metres
                        + "at"
                        + line.unitPrice().getAmount().toPlainString()
                        + per);
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void givesTheSameBytesForTheSameQuote(Paper paper) {
        assertThat(print(QUOTE, paper)).isEqualTo(print(QUOTE, paper));
    }

    @Test
    void writesItsLinesAsCsvThatAddsUp() {
        List<CsvRecord> rows =
                CsvReader.builder()
                        .ofCsvRecord(new String(QuoteTable.print(QUOTE), StandardCharsets.UTF_8))
                        .stream()
                        .toList();
        assertThat(rows.getFirst().getFields())
                .containsExactly(
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
        for (Variant variant : QUOTE.variants()) {
            BigDecimal sum = BigDecimal.ZERO;
            BigDecimal net = BigDecimal.ZERO;
            int lines = 0;
            for (CsvRecord row : rows) {
                if (row.getField(2).equals(variant.kind().code())) {
                    switch (row.getField(3)) {
                        case "part", "labour", "shipping" -> {
                            sum = sum.add(new BigDecimal(row.getField(11)));
                            lines++;
                        }
                        case "net" -> net = new BigDecimal(row.getField(11));
                        default -> {}
                    }
                }
            }
            assertThat(lines).isEqualTo(variant.lines().size());
            assertThat(sum).isEqualTo(net).isEqualTo(variant.net().getAmount());
        }
    }

    @Test
    void defusesFormulasInItsTextsAndLeavesNumbersAlone() {
        QuoteLine line = QUOTE.variants().getFirst().lines().getFirst();
        QuoteLine hostile =
                new QuoteLine(
                        line.kind(),
                        line.group(),
                        line.code(),
                        "=HYPERLINK(\"x\",\"y\")",
                        line.detail(),
                        line.quantity(),
                        line.unit(),
                        line.unitCost(),
                        line.source(),
                        line.markUpPercent(),
                        line.unitPrice(),
                        line.per(),
                        line.cost(),
                        line.price());
        String table = new String(QuoteTable.print(withLine(hostile)), StandardCharsets.UTF_8);
        assertThat(table)
                .contains(",\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\",3,each,24.9345,1,74.80,EUR\r\n")
                .doesNotContain(",=", "\"=", ",'3", ",'2");
    }

    private static Quote withLine(QuoteLine line) {
        Variant variant = QUOTE.variants().getFirst();
        return new Quote(
                QUOTE.number(),
                QUOTE.revision(),
                QUOTE.quotedOn(),
                QUOTE.validUntil(),
                QUOTE.job(),
                QUOTE.kits(),
                QUOTE.currency(),
                QUOTE.tax(),
                QUOTE.shipped(),
                List.of(
                        new Variant(
                                variant.kind(),
                                variant.fingerprint(),
                                variant.passes(),
                                variant.cautions(),
                                variant.fails(),
                                variant.warnings(),
                                variant.protections(),
                                variant.blocks(),
                                variant.massG(),
                                List.of(line),
                                variant.gaps(),
                                variant.net(),
                                variant.tax(),
                                variant.total(),
                                variant.cost())),
                QUOTE.terms(),
                QUOTE.notIncluded());
    }
}
