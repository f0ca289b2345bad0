package org.fusewright.papers;

import org.jspecify.annotations.Nullable;
import org.openpdf.text.pdf.PdfContentByte;

import java.awt.Color;

/** Draws text and lines on one page; y counts upwards from the sheet's lower edge. */
final class Pen {

    private static final float[] SOLID = {};

    private final PdfContentByte canvas;
    private @Nullable Lettering set;
    private @Nullable Color strokeColour;
    private float strokeWidth = Float.NaN;

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

    /** Chooses what the next lines are drawn with; says so only when it changes. */
    void stroke(float width, Color colour) {
        if (width != strokeWidth) {
            canvas.setLineWidth(width);
            strokeWidth = width;
        }
        if (!colour.equals(strokeColour)) {
            canvas.setColorStroke(colour);
            strokeColour = colour;
        }
    }

    void line(float width, Color colour, float x1, float y1, float x2, float y2) {
        stroke(width, colour);
        canvas.moveTo(x1, y1);
        canvas.lineTo(x2, y2);
        canvas.stroke();
    }

    /** An outlined box by its left lower corner. */
    void box(float lineWidth, float x, float y, float width, float height) {
        stroke(lineWidth, Style.INK);
        canvas.rectangle(x, y, width, height);
        canvas.stroke();
    }

    void roundBox(float lineWidth, float x, float y, float width, float height, float radius) {
        stroke(lineWidth, Style.INK);
        canvas.roundRectangle(x, y, width, height, radius);
        canvas.stroke();
    }

    void fill(Color colour, float x, float y, float width, float height) {
        canvas.setColorFill(colour);
        canvas.rectangle(x, y, width, height);
        canvas.fill();
        canvas.setColorFill(Style.INK);
    }

    /**
     * Draws turned by a quarter, so that text runs upwards: within {@code drawing}, x goes up the
     * sheet from (x, y) and y goes to its left.
     */
    void upwards(float x, float y, Runnable drawing) {
        Lettering setBefore = set;
        Color colourBefore = strokeColour;
        float widthBefore = strokeWidth;
        canvas.saveState();
        canvas.concatCTM(0, 1, -1, 0, x, y);
        drawing.run();
        canvas.restoreState();
        set = setBefore;
        strokeColour = colourBefore;
        strokeWidth = widthBefore;
    }

    void dashed(float[] dashes, Runnable drawing) {
        canvas.setLineDash(dashes, 0);
        drawing.run();
        canvas.setLineDash(SOLID, 0);
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
