package org.fusewright.papers;

import org.fusewright.core.quote.Quote;

/** What is offered, to whom and until when. */
final class QuoteStatusSection {
    private static final float PAD = 7;
    private static final float BELOW_MARK = 2;
    private static final int LINES = 3;

    private final Sheet sheet;
    private final Quote quote;
    private final boolean draft;

    QuoteStatusSection(Sheet sheet, Quote quote, boolean draft) {
        this.sheet = sheet;
        this.quote = quote;
        this.draft = draft;
    }

    void print() {
        float height = 2 * PAD + BELOW_MARK + Style.MARK.leading() + LINES * Style.BODY.leading();
        float x = sheet.left() + PAD;
        float room = sheet.width() - 2 * PAD;
        sheet.pen().box(Style.THICK, sheet.left(), sheet.y() - height, sheet.width(), height);
        sheet.pen()
                .text(
                        Style.MARK,
                        Style.MARK.clip(statement(), room),
                        x,
                        sheet.y() - PAD - Style.MARK.ascent());
        float baseline = sheet.y() - PAD - Style.MARK.leading() - BELOW_MARK - Style.BODY.ascent();
        for (String line : new String[] {dates(), subject(), tax()}) {
            sheet.pen().text(Style.BODY, Style.BODY.clip(line, room), x, baseline);
            baseline -= Style.BODY.leading();
        }
        sheet.down(height + PAD / 2);
        sheet.paragraph(Style.SMALL, design());
    }

    private String statement() {
        return draft
                ? "Draft: not an offer yet"
                : "Valid until " + quote.validUntil() + ", that day included";
    }

    private String dates() {
        return "Quote %s, revision %d, of %s. %s %s; all amounts in %s."
                .formatted(
                        quote.number(),
                        quote.revision(),
                        quote.quotedOn(),
                        quote.kits(),
                        quote.kits() == 1 ? "kit" : "equal kits",
                        quote.currency().getCode());
    }

    private String subject() {
        return "Job %s, revision %d: %s, for %s."
                .formatted(
                        quote.job().reference(),
                        quote.job().revision(),
                        quote.job().title(),
                        quote.job().customer().isEmpty() ? "the customer" : quote.job().customer());
    }

    private String tax() {
        String rate =
                "%s: tax %s %%."
                        .formatted(quote.tax().title(), quote.tax().percent().toPlainString());
        return quote.tax().note().isEmpty() ? rate : rate + " " + quote.tax().note();
    }

    private String design() {
        return "Fingerprint %s; catalog %s. Each line and the tax are rounded once, half up."
                .formatted(quote.fingerprint(), quote.job().catalogVersion());
    }
}
