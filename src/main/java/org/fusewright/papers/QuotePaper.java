package org.fusewright.papers;

import org.fusewright.core.quote.LineKind;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.words.Wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The quote as it goes to the customer: variants side by side, then each line by line. What the
 * shop pays is not on it. The same quote on the same paper gives the same bytes.
 */
public final class QuotePaper {
    private static final float INDENT = 14;

    private final Sheet sheet;
    private final Quote quote;

    private QuotePaper(Sheet sheet, Quote quote) {
        this.sheet = sheet;
        this.quote = quote;
    }

    /**
     * Prints as PDF.
     *
     * @param changes against the revision that went out before
     * @param draft whether it says that it is no offer yet
     * @param wording how its reader is spoken to
     */
    public static byte[] print(
            Quote quote,
            Optional<QuoteChanges> changes,
            boolean draft,
            Paper paper,
            Wording wording) {
        Sheet sheet = new Sheet(paper, wording, heading(quote, wording), quote.fingerprint());
        QuotePaper printed = new QuotePaper(sheet, quote);
        new QuoteStatusSection(sheet, quote, draft).print();
        new VariantsSection(sheet, quote).print();
        changes.ifPresent(since -> new QuoteChangesSection(sheet, since).print());
        for (Variant variant : quote.variants()) {
            new QuoteLinesSection(sheet, quote, variant).print();
        }
        printed.list(sheet.say("quotes.not-included"), printed.listNotIncluded());
        printed.list(sheet.say("quotes.terms"), quote.terms());
        new CautionsSection(sheet).print();
        new AcceptanceSection(sheet).print();
        return sheet.close();
    }

    private static KitHeading heading(Quote quote, Wording wording) {
        return new KitHeading(
                wording.say("print.quote.title"),
                quote.number(),
                quote.job().title(),
                quote.job().customer(),
                OptionalInt.of(quote.revision()),
                PaperFont.BOLD.printable(
                        KitHeading.grouped(KitHeading.shortened(quote.fingerprint()))),
                quote.job().catalogVersion());
    }

    private List<String> listNotIncluded() {
        List<String> all = new ArrayList<>(quote.notIncluded());
        if (!quote.shipped()) {
            all.add(sheet.say("print.quote.fetched"));
        } else if (quote.variants().stream().anyMatch(variant -> !isShipped(variant))) {
            all.add(sheet.say("print.quote.shipping-apart"));
        }
        return all;
    }

    private static boolean isShipped(Variant variant) {
        return variant.lines().stream().anyMatch(line -> line.kind() == LineKind.SHIPPING);
    }

    private void list(String heading, List<String> passages) {
        if (passages.isEmpty()) {
            return;
        }
        Headings.drawSection(sheet, heading, 2 * Style.BODY.leading());
        for (String passage : passages) {
            sheet.keep(Style.BODY.leading());
            sheet.pen().text(Style.BODY, "–", sheet.left(), sheet.y() - Style.BODY.ascent());
            sheet.paragraph(Style.BODY, passage, INDENT);
        }
    }
}
