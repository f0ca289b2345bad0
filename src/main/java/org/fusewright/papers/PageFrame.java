package org.fusewright.papers;

import org.fusewright.core.words.Wording;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;

import java.util.List;

/** Border, title block and foot of every page. */
final class PageFrame {

    private static final float TITLE_BLOCK = 50;
    private static final float FOOT = 19;
    private static final float PAD = 6;
    private static final float CENTRE_MARK = 8;
    private static final String WIDEST_NUMBER = "000";
    private static final float TOTAL_WIDTH = 30;
    private static final float TOTAL_HEIGHT = 12;
    private static final float TOTAL_DEPTH = 4;

    private final KitHeading heading;
    private final Wording wording;
    private final PdfTemplate total;

    /** The number of pages is known last: a template stands for it on every page. */
    PageFrame(KitHeading heading, Wording wording, PdfWriter writer) {
        this.heading = heading;
        this.wording = wording;
        total = writer.getDirectContent().createTemplate(TOTAL_WIDTH, TOTAL_HEIGHT);
        total.setBoundingBox(new Rectangle(0, -TOTAL_DEPTH, TOTAL_WIDTH, TOTAL_HEIGHT));
    }

    float top(Paper paper) {
        return paper.height() - Style.BORDER - TITLE_BLOCK - Style.INSET;
    }

    float bottom() {
        return Style.BORDER + FOOT + Style.INSET;
    }

    void end(int pages) {
        new Pen(total).text(Style.SMALL, Integer.toString(pages), 0, 0);
    }

    void draw(Pen pen, Paper paper, int page) {
        float left = Style.BORDER;
        float width = paper.width() - 2 * Style.BORDER;
        float height = paper.height() - 2 * Style.BORDER;
        pen.box(Style.THICK, left, Style.BORDER, width, height);
        drawCentreMarks(pen, paper);
        drawTitleBlock(pen, left, paper.height() - Style.BORDER, width);
        drawFoot(pen, left, width, page);
    }

    /** Where the sheet folds and copies are aligned. */
    private static void drawCentreMarks(Pen pen, Paper paper) {
        float x = paper.width() / 2;
        float y = paper.height() / 2;
        float far = Style.BORDER - CENTRE_MARK;
        pen.line(Style.THIN, Style.INK, x, far, x, Style.BORDER);
        pen.line(Style.THIN, Style.INK, x, paper.height() - Style.BORDER, x, paper.height() - far);
        pen.line(Style.THIN, Style.INK, far, y, Style.BORDER, y);
        pen.line(Style.THIN, Style.INK, paper.width() - Style.BORDER, y, paper.width() - far, y);
    }

    private void drawTitleBlock(Pen pen, float left, float top, float width) {
        float base = top - TITLE_BLOCK;
        float middle = left + width * 0.26f;
        float end = left + width * 0.72f;
        pen.line(Style.THICK, Style.INK, left, base, left + width, base);
        pen.line(Style.THIN, Style.INK, middle, base, middle, top);
        pen.line(Style.THIN, Style.INK, end, base, end, top);

        column(pen, left, top, middle, heading.paper(), heading.reference(), Style.SECTION);
        column(pen, middle, top, end, heading.customer(), heading.title(), Style.GROUP);
        float x = end + PAD;
        float room = left + width - PAD - x;
        label(pen, x, top - 11, wording.say("print.frame.fingerprint"));
        pen.text(Style.STRONG, heading.shortFingerprint(), x, top - 21.5f);
        heading.revision().ifPresent(revision -> drawRevision(pen, revision, x + room, top));
        label(pen, x, top - 34, wording.say("print.frame.catalog"));
        pen.text(Style.SMALL, Style.SMALL.clip(heading.catalogVersion(), room), x, top - 44.5f);
    }

    private void drawRevision(Pen pen, int revision, float right, float top) {
        pen.textRight(Style.SMALL, wording.say("print.frame.revision"), right, top - 11);
        pen.textRight(Style.STRONG, Integer.toString(revision), right, top - 21.5f);
    }

    private static void column(
            Pen pen, float left, float top, float right, String label, String text, Lettering big) {
        float x = left + PAD;
        float room = right - left - 2 * PAD;
        label(pen, x, top - 11, Style.SMALL.clip(label, room));
        float baseline = top - 14 - big.ascent();
        List<String> lines = big.wrap(text, room, 2);
        for (String line : lines) {
            pen.text(big, line, x, baseline);
            baseline -= big.leading();
        }
    }

    private static void label(Pen pen, float x, float baseline, String text) {
        pen.text(Style.SMALL, text, x, baseline);
    }

    private void drawFoot(Pen pen, float left, float width, int page) {
        float top = Style.BORDER + FOOT;
        float baseline = Style.BORDER + 6.5f;
        pen.line(Style.THIN, Style.INK, left, top, left + width, top);
        float third = width / 3;
        pen.text(
                Style.SMALL,
                Style.SMALL.clip(
                        heading.paper() + " " + heading.referenceAndRevision(wording), third),
                left + PAD,
                baseline);
        pen.textCentred(
                Style.SMALL,
                wording.say("print.frame.fingerprint-of", heading.shortFingerprint()),
                left + width / 2,
                baseline);
        float x = left + width - PAD - Style.SMALL.width(page(WIDEST_NUMBER, WIDEST_NUMBER));
        String counted = page(Integer.toString(page), "");
        pen.text(Style.SMALL, counted, x, baseline);
        pen.canvas().addTemplate(total, x + Style.SMALL.width(counted), baseline);
    }

    /** The total stands last, so that a template can stand for it. */
    private String page(String number, String total) {
        return wording.say("print.frame.page", number, total);
    }
}
