package org.fusewright.papers;

import java.util.List;

/** Where the people who built and checked the kit sign by hand. */
final class SignOffSection {

    private static final List<String> FIELDS =
            List.of(
                    "print.sign-off.built-by",
                    "print.sign-off.date",
                    "print.sign-off.checked-by",
                    "print.sign-off.date",
                    "print.sign-off.notes");
    private static final List<Float> SHARES = List.of(3f, 1.5f, 3f, 1.5f);
    private static final float HEIGHT = 40;
    private static final float NOTES_HEIGHT = 56;
    private static final float PAD = 5;

    private final Sheet sheet;

    SignOffSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        Headings.drawSection(sheet, sheet.say("print.sign-off.title"), HEIGHT + NOTES_HEIGHT);
        float shares = (float) SHARES.stream().mapToDouble(Float::doubleValue).sum();
        float x = sheet.left();
        for (int i = 0; i < SHARES.size(); i++) {
            float width = sheet.width() * SHARES.get(i) / shares;
            field(FIELDS.get(i), x, width, HEIGHT);
            x += width;
        }
        sheet.down(HEIGHT);
        field(FIELDS.getLast(), sheet.left(), sheet.width(), NOTES_HEIGHT);
        sheet.down(NOTES_HEIGHT);
    }

    private void field(String label, float x, float width, float height) {
        sheet.pen().box(Style.THIN, x, sheet.y() - height, width, height);
        sheet.pen()
                .text(
                        Style.SMALL,
                        sheet.say(label),
                        x + PAD,
                        sheet.y() - PAD - Style.SMALL.ascent());
    }
}
