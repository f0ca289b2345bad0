package org.fusewright.papers;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A paper read back with a library that did not write it. */
final class PrintedPaper implements AutoCloseable {

    /** A sign on a page, in points from the page's left upper corner. */
    record Sign(int page, String text, float left, float right, float baseline, float size) {}

    private final PDDocument document;

    private PrintedPaper(PDDocument document) {
        this.document = document;
    }

    static PrintedPaper of(byte[] pdf) {
        try {
            return new PrintedPaper(Loader.loadPDF(pdf));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    PDDocument document() {
        return document;
    }

    int pages() {
        return document.getNumberOfPages();
    }

    /** Text in the order in which it was written, line by line. */
    String text() {
        return text(1, pages());
    }

    String text(int page) {
        return text(page, page);
    }

    private String text(int from, int to) {
        try {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(from);
            stripper.setEndPage(to);
            return stripper.getText(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Text without any white space: a long word may be broken over lines. */
    String denseText() {
        return dense(join(signs()));
    }

    static String dense(String text) {
        return text.replaceAll("[\\s\u00A0]", "");
    }

    List<Sign> signs() {
        List<Sign> signs = new ArrayList<>();
        try {
            PDFTextStripper stripper =
                    new PDFTextStripper() {
                        @Override
                        protected void writeString(String text, List<TextPosition> positions) {
                            positions.forEach(position -> signs.add(sign(position)));
                        }

                        private Sign sign(TextPosition position) {
                            return new Sign(
                                    getCurrentPageNo(),
                                    position.getUnicode(),
                                    position.getXDirAdj(),
                                    position.getXDirAdj() + position.getWidthDirAdj(),
                                    position.getYDirAdj(),
                                    position.getFontSizeInPt());
                        }
                    };
            stripper.writeText(document, Writer.nullWriter());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return signs;
    }

    /** The lowest line of a page above a given depth. */
    List<Sign> lastLine(int page, float above) {
        List<Sign> inside =
                signs().stream()
                        .filter(sign -> sign.page() == page && sign.baseline() < above)
                        .toList();
        float lowest = inside.stream().map(Sign::baseline).max(Float::compare).orElseThrow();
        return inside.stream().filter(sign -> sign.baseline() == lowest).toList();
    }

    static String join(List<Sign> signs) {
        return signs.stream().map(Sign::text).collect(Collectors.joining());
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
