package org.fusewright.papers;

import org.jspecify.annotations.Nullable;
import org.openpdf.text.pdf.PdfContentByte;

import java.awt.Color;

/** Draws text and lines on one page; y counts upwards from the sheet's lower edge. */
final class Pen {

    private final PdfContentByte canvas;
    private @Nullable Lettering set;

    Pen(PdfContentByte canvas) {
        this.canvas = canvas;
    }

    PdfContentByte canvas() {
        return canvas;
    }

    /**
     * @throws IllegalStateException when the font lacks a sign of the text
     */
    void text(Lettering lettering, String printable, float x, float baseline) {
        if (printable.isEmpty()) {
            return;
        }
        requireGlyphs(lettering.font(), printable);
        canvas.beginText();
        if (!lettering.equals(set)) {
            canvas.setFontAndSize(lettering.font().base(), lettering.size());
            set = lettering;
        }
        canvas.moveText(x, baseline);
        canvas.showText(printable);
        canvas.endText();
    }

    void textRight(Lettering lettering, String printable, float right, float baseline) {
        text(lettering, printable, right - lettering.width(printable), baseline);
    }

    void textCentred(Lettering lettering, String printable, float middle, float baseline) {
        text(lettering, printable, middle - lettering.width(printable) / 2, baseline);
    }

    void line(float width, Color colour, float x1, float y1, float x2, float y2) {
        canvas.setLineWidth(width);
        canvas.setColorStroke(colour);
        canvas.moveTo(x1, y1);
        canvas.lineTo(x2, y2);
        canvas.stroke();
    }

    /** An outlined box by its left lower corner. */
    void box(float lineWidth, float x, float y, float width, float height) {
        canvas.setLineWidth(lineWidth);
        canvas.setColorStroke(Style.INK);
        canvas.rectangle(x, y, width, height);
        canvas.stroke();
    }

    void roundBox(float lineWidth, float x, float y, float width, float height, float radius) {
        canvas.setLineWidth(lineWidth);
        canvas.setColorStroke(Style.INK);
        canvas.roundRectangle(x, y, width, height, radius);
        canvas.stroke();
    }

    void fill(Color colour, float x, float y, float width, float height) {
        canvas.setColorFill(colour);
        canvas.rectangle(x, y, width, height);
        canvas.fill();
        canvas.setColorFill(Style.INK);
    }

    private static void requireGlyphs(PaperFont font, String text) {
        for (int i = 0; i < text.length(); ) {
            int sign = text.codePointAt(i);
            if (!font.holds(sign)) {
                throw new IllegalStateException(
                        "no glyph for U+%04X in \"%s\"".formatted(sign, text));
            }
            i += Character.charCount(sign);
        }
    }
}
