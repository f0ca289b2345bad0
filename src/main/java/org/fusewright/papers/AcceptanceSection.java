package org.fusewright.papers;

import java.util.List;

/** Where the customer accepts by hand. */
final class AcceptanceSection {
    private static final List<String> LABELS =
            List.of("print.quote.variant", "print.quote.name-and-date", "print.quote.signature");
    private static final float HEIGHT = 40;
    private static final float PAD = 5;

    private final Sheet sheet;

    AcceptanceSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        Headings.drawSection(sheet, sheet.say("print.quote.accepted"), HEIGHT);
        float third = sheet.width() / 3;
        float x = sheet.left();
        for (String label : LABELS) {
            sheet.pen().box(Style.THIN, x, sheet.y() - HEIGHT, third, HEIGHT);
            sheet.pen()
                    .text(
                            Style.SMALL,
                            sheet.say(label),
                            x + PAD,
                            sheet.y() - PAD - Style.SMALL.ascent());
            x += third;
        }
        sheet.down(HEIGHT);
    }
}
