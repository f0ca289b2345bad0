package org.fusewright.papers;

import java.awt.Color;

/** The look of all papers: a workshop drawing in black lines that survives a copier. */
final class Style {

    /** From the sheet's edge to the border line. */
    static final float BORDER = 28;

    /** From the border line to the text. */
    static final float INSET = 9;

    static final Lettering BODY = new Lettering(PaperFont.REGULAR, 8.5f);
    static final Lettering STRONG = new Lettering(PaperFont.BOLD, 8.5f);
    static final Lettering SMALL = new Lettering(PaperFont.REGULAR, 8);
    static final Lettering SMALL_STRONG = new Lettering(PaperFont.BOLD, 8);
    static final Lettering SECTION = new Lettering(PaperFont.BOLD, 12);
    static final Lettering GROUP = new Lettering(PaperFont.BOLD, 9.5f);
    static final Lettering MARK = new Lettering(PaperFont.BOLD, 15);
    static final Lettering TICK_BOX = new Lettering(PaperFont.REGULAR, 10.5f);

    static final float HAIRLINE = 0.35f;
    static final float THIN = 0.6f;
    static final float THICK = 1.3f;

    static final Color INK = Color.BLACK;
    static final Color RULE = new Color(0x8A, 0x8A, 0x8A);
    static final Color TINT = new Color(0xEE, 0xEE, 0xEC);

    private static final float POINTS_PER_MM = 72 / 25.4f;

    private Style() {}

    /** Millimetres in points. */
    static float mm(double mm) {
        return (float) mm * POINTS_PER_MM;
    }
}
