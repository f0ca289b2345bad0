package org.fusewright.papers;

import org.fusewright.core.quantity.WireColour;
import org.openpdf.text.pdf.PdfContentByte;

import java.awt.Color;
import java.util.Map;
import java.util.Optional;

/** Colour fields of wires and devices; their letters or words always stand beside them. */
final class Swatch {

    private static final Map<String, Color> WIRES =
            Map.ofEntries(
                    Map.entry("BK", new Color(0x1A, 0x1A, 0x1A)),
                    Map.entry("BN", new Color(0x7B, 0x4A, 0x24)),
                    Map.entry("RD", new Color(0xD2, 0x1F, 0x26)),
                    Map.entry("OG", new Color(0xF0, 0x82, 0x1E)),
                    Map.entry("YE", new Color(0xF7, 0xD9, 0x17)),
                    Map.entry("GN", new Color(0x1E, 0x8E, 0x3E)),
                    Map.entry("BU", new Color(0x1F, 0x5F, 0xBF)),
                    Map.entry("VT", new Color(0x7A, 0x3F, 0xA0)),
                    Map.entry("GY", new Color(0x8C, 0x8C, 0x8C)),
                    Map.entry("WH", Color.WHITE),
                    Map.entry("PK", new Color(0xF4, 0x9A, 0xC1)),
                    Map.entry("TQ", new Color(0x2F, 0xB5, 0xB0)));

    private static final Color TAN = new Color(0xD9, 0xB3, 0x82);

    static final float BAR_WIDTH = 30;
    static final float BAR_HEIGHT = 8;

    private Swatch() {}

    /** A piece of wire seen from the side; a stripe runs along it. */
    static void bar(Pen pen, WireColour colour, float x, float y) {
        pen.fill(paint(colour.base()), x, y, BAR_WIDTH, BAR_HEIGHT);
        colour.stripe()
                .ifPresent(
                        stripe ->
                                pen.fill(
                                        paint(stripe),
                                        x,
                                        y + BAR_HEIGHT * 0.35f,
                                        BAR_WIDTH,
                                        BAR_HEIGHT * 0.3f));
        pen.box(Style.THIN, x, y, BAR_WIDTH, BAR_HEIGHT);
    }

    /** A wire seen from its end, with a band across for its stripe. */
    static void end(Pen pen, WireColour colour, float x, float y, float radius) {
        PdfContentByte canvas = pen.canvas();
        canvas.setColorFill(paint(colour.base()));
        canvas.circle(x, y, radius);
        canvas.fill();
        colour.stripe().ifPresent(stripe -> band(canvas, paint(stripe), x, y, radius));
        pen.stroke(Style.THIN, Style.INK);
        canvas.circle(x, y, radius);
        canvas.stroke();
        canvas.setColorFill(Style.INK);
    }

    /** The body colour of a device by its word in ISO 8820-3; none for a word that is no colour. */
    static Optional<Color> body(String word) {
        String first = word.split("[/ ]", 2)[0];
        if (first.equals("tan")) {
            return Optional.of(TAN);
        }
        return first.equals("clear")
                ? Optional.of(Color.WHITE)
                : WireColour.findByWord(first).map(Swatch::paint);
    }

    private static void band(PdfContentByte canvas, Color colour, float x, float y, float radius) {
        float half = radius * 0.32f;
        float edge = (float) Math.sqrt(radius * radius - half * half);
        canvas.setColorFill(colour);
        canvas.rectangle(x - edge, y - half, 2 * edge, 2 * half);
        canvas.fill();
    }

    private static Color paint(WireColour single) {
        Color colour = WIRES.get(single.code());
        if (colour == null) {
            throw new IllegalStateException("no paint for " + single);
        }
        return colour;
    }
}
