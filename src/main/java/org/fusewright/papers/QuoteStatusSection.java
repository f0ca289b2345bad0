package org.fusewright.papers;

import org.fusewright.core.quote.Quote;
import org.fusewright.core.words.Phrase;

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
                ? sheet.say("print.quote.draft")
                : sheet.say(
                        "print.quote.valid-until",
                        Moments.day(quote.validUntil(), sheet.wording()));
    }

    private String dates() {
        return sheet.say(
                Phrase.counted(
                        "print.quote.dates",
                        quote.kits(),
                        quote.number(),
                        quote.revision(),
                        Moments.day(quote.quotedOn(), sheet.wording()),
                        quote.currency().getCode()));
    }

    private String subject() {
        return sheet.say(
                "print.quote.subject",
                quote.job().reference(),
                quote.job().revision(),
                quote.job().title(),
                quote.job().customer().isEmpty()
                        ? sheet.say("print.quote.the-customer")
                        : quote.job().customer());
    }

    private String tax() {
        String rate = sheet.say("print.quote.tax-kind", quote.tax().title(), quote.tax().percent());
        return quote.tax().note().isEmpty() ? rate : rate + " " + quote.tax().note();
    }

    private String design() {
        return sheet.say("print.quote.design", quote.fingerprint(), quote.job().catalogVersion());
    }
}
