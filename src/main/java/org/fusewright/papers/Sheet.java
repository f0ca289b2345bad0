package org.fusewright.papers;

import org.fusewright.core.words.Text;
import org.fusewright.core.words.Wording;
import org.openpdf.text.Document;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfEncryption;
import org.openpdf.text.pdf.PdfName;
import org.openpdf.text.pdf.PdfString;
import org.openpdf.text.pdf.PdfWriter;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/**
 * The pages of a paper, filled from top to bottom. Text flows between {@link #left} and {@link
 * #right}; {@link #y} is where the next thing goes. The same content gives the same bytes: there is
 * no date in it, and its file id comes from the fingerprint.
 */
final class Sheet {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
    private final Document document;
    private final PdfWriter writer;
    private final Paper paper;
    private final Wording wording;
    private final Figures figures;
    private final KitHeading heading;
    private final PageFrame frame;
    private Pen pen;
    private float y;

    Sheet(Paper paper, Wording wording, KitHeading heading, String fingerprint) {
        this.paper = paper;
        this.wording = wording;
        this.figures = new Figures(wording);
        this.heading = heading;
        document = new Document(new Rectangle(paper.width(), paper.height()));
        writer = PdfWriter.getInstance(document, out);
        document.addTitle(heading.documentTitle());
        writer.setViewerPreferences(PdfWriter.DisplayDocTitle);
        document.open();
        writer.getInfo().remove(PdfName.CREATIONDATE);
        byte[] id = fingerprint.getBytes(StandardCharsets.UTF_8);
        writer.getInfo().put(PdfName.FILEID, PdfEncryption.createInfoId(id, id));
        writer.getExtraCatalog().put(PdfName.LANG, new PdfString(wording.language().code()));
        frame = new PageFrame(heading, wording, writer);
        startPage();
    }

    KitHeading heading() {
        return heading;
    }

    /** How the reader of the paper is spoken to. */
    Wording wording() {
        return wording;
    }

    Figures figures() {
        return figures;
    }

    /** A text of the bundle; see {@link org.fusewright.core.words.Phrase}. */
    String say(String key, Object... values) {
        return wording.say(key, values);
    }

    String say(Text text) {
        return wording.say(text);
    }

    Pen pen() {
        return pen;
    }

    float left() {
        return Style.BORDER + Style.INSET;
    }

    float right() {
        return paper.width() - Style.BORDER - Style.INSET;
    }

    float width() {
        return right() - left();
    }

    float y() {
        return y;
    }

    /** Height that is left on this page. */
    float room() {
        return y - frame.bottom();
    }

    /** Height of an empty page. */
    float pageRoom() {
        return frame.top(paper) - frame.bottom();
    }

    boolean isFresh() {
        return y == frame.top(paper);
    }

    void down(float distance) {
        y -= distance;
    }

    /** Turns the page when less than {@code height} is left and a fresh page has more. */
    void keep(float height) {
        if (room() < height && !isFresh()) {
            newPage();
        }
    }

    void newPage() {
        document.newPage();
        startPage();
    }

    /** Text of the full width, line by line, over the page's end where it must. */
    void paragraph(Lettering lettering, String text) {
        paragraph(lettering, text, 0);
    }

    void paragraph(Lettering lettering, String text, float indent) {
        for (String line : lettering.wrap(text, width() - indent)) {
            keep(lettering.leading());
            pen.text(lettering, line, left() + indent, y - lettering.ascent());
            down(lettering.leading());
        }
    }

    byte[] close() {
        frame.end(writer.getPageNumber());
        document.close();
        return out.toByteArray();
    }

    private void startPage() {
        pen = new Pen(writer.getDirectContent());
        // A page without content is never written; the frame also makes it one with content.
        frame.draw(pen, paper, writer.getPageNumber());
        y = frame.top(paper);
    }
}
