package org.fusewright.papers;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A paper read back with a library that did not write it. */
final class PrintedPaper implements AutoCloseable {

    /**
     * A sign on a page, in points from the page's left upper corner; of one that is not upright but
     * runs up the page, the baseline is where it begins.
     */
    record Sign(
            int page,
            String text,
            float left,
            float right,
            float baseline,
            float size,
            boolean upright) {}

    /** A rectangle on a page, in points from the page's left upper corner. */
    record Rectangle(int page, double left, double top, double width, double height) {}

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

    /** Each piece of text that was written at once: a line of a cell, a label. */
    List<String> pieces() {
        List<String> pieces = new ArrayList<>();
        try {
            PDFTextStripper stripper =
                    new PDFTextStripper() {
                        private final StringBuilder piece = new StringBuilder();

                        @Override
                        public void showTextString(byte[] text) throws IOException {
                            piece.setLength(0);
                            super.showTextString(text);
                            pieces.add(piece.toString());
                        }

                        @Override
                        protected void processTextPosition(TextPosition position) {
                            piece.append(position.getUnicode());
                        }
                    };
            stripper.writeText(document, Writer.nullWriter());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return pieces;
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
                            float size = position.getFontSizeInPt();
                            if (position.getDir() != 0) {
                                return new Sign(
                                        getCurrentPageNo(),
                                        position.getUnicode(),
                                        position.getX() - size,
                                        position.getX(),
                                        position.getY(),
                                        size,
                                        false);
                            }
                            return new Sign(
                                    getCurrentPageNo(),
                                    position.getUnicode(),
                                    position.getXDirAdj(),
                                    position.getXDirAdj() + position.getWidthDirAdj(),
                                    position.getYDirAdj(),
                                    size,
                                    true);
                        }
                    };
            stripper.writeText(document, Writer.nullWriter());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return signs;
    }

    /** All upright rectangles that are drawn or filled. */
    List<Rectangle> rectangles() {
        try {
            List<Rectangle> rectangles = new ArrayList<>();
            for (int page = 1; page <= pages(); page++) {
                new RectangleReader(document.getPage(page - 1), page, rectangles).read();
            }
            return rectangles;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A page as a printer of so many dots to the inch would see it. */
    BufferedImage picture(int page, int dotsPerInch) {
        try {
            return new PDFRenderer(document)
                    .renderImageWithDPI(page - 1, dotsPerInch, ImageType.GRAY);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
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
