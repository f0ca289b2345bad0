package org.fusewright.papers;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.openpdf.text.Chunk;
import org.openpdf.text.Document;
import org.openpdf.text.Font;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfWriter;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/**
 * The text of a paper, page by page and line by line in the same fonts, as the library sets it by
 * itself: paragraphs, no tables, no drawing, no frame.
 */
public final class PlainPaper {

    private static final float MARGIN = 20;
    private static final float MOST_LEADING = 10;
    private static final float WRAPPED_LINES = 1.6f;

    private record Run(String text, boolean bold, float size) {}

    private final List<List<List<Run>>> pages = new ArrayList<>();
    private final Rectangle size;

    private PlainPaper(Rectangle size) {
        this.size = size;
    }

    /** Takes the text out of a paper. */
    public static PlainPaper of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            var box = document.getPage(0).getMediaBox();
            PlainPaper plain = new PlainPaper(new Rectangle(box.getWidth(), box.getHeight()));
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                plain.pages.add(lines(document, page));
            }
            return plain;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int pages() {
        return pages.size();
    }

    /** Sets the text anew. */
    public byte[] print() {
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
        Document document = new Document(size, MARGIN, MARGIN, MARGIN, MARGIN);
        PdfWriter.getInstance(document, out);
        document.open();
        for (List<List<Run>> page : pages) {
            document.newPage();
            float leading = leading(page.size());
            for (List<Run> line : page) {
                Paragraph paragraph = new Paragraph(leading);
                for (Run run : line) {
                    PaperFont font = run.bold() ? PaperFont.BOLD : PaperFont.REGULAR;
                    paragraph.add(new Chunk(run.text(), new Font(font.base(), run.size())));
                }
                document.add(paragraph);
            }
        }
        document.close();
        return out.toByteArray();
    }

    /** As many lines as the page has must fit, though some of them wrap here. */
    private float leading(int lines) {
        return Math.min(MOST_LEADING, (size.getHeight() - 2 * MARGIN) / lines / WRAPPED_LINES);
    }

    private static List<List<Run>> lines(PDDocument document, int page) throws IOException {
        List<List<Run>> lines = new ArrayList<>();
        lines.add(new ArrayList<>());
        PDFTextStripper stripper =
                new PDFTextStripper() {
                    @Override
                    protected void writeString(String text, List<TextPosition> positions) {
                        TextPosition first = positions.getFirst();
                        boolean bold = first.getFont().getName().contains("Bold");
                        lines.getLast().add(new Run(text, bold, first.getFontSizeInPt()));
                    }

                    @Override
                    protected void writeWordSeparator() {
                        Run last = lines.getLast().removeLast();
                        lines.getLast().add(new Run(last.text() + " ", last.bold(), last.size()));
                    }

                    @Override
                    protected void writeLineSeparator() {
                        lines.add(new ArrayList<>());
                    }
                };
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.writeText(document, Writer.nullWriter());
        lines.removeIf(List::isEmpty);
        return lines;
    }
}
