package org.fusewright.papers;

/** Where the customer accepts by hand. */
final class AcceptanceSection {
    private static final float HEIGHT = 40;
    private static final float PAD = 5;

    private final Sheet sheet;

    AcceptanceSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        Headings.drawSection(sheet, "Accepted", HEIGHT);
        float third = sheet.width() / 3;
        float x = sheet.left();
        for (String label : new String[] {"Variant", "Name and date", "Signature"}) {
            sheet.pen().box(Style.THIN, x, sheet.y() - HEIGHT, third, HEIGHT);
            sheet.pen().text(Style.SMALL, label, x + PAD, sheet.y() - PAD - Style.SMALL.ascent());
            x += third;
        }
        sheet.down(HEIGHT);
    }
}
