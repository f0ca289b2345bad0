package org.fusewright.papers;

import java.util.List;

/** The cautions that every paper carries. */
final class CautionsSection {

    static final List<String> CAUTIONS =
            List.of(
                    "print.caution.disconnect",
                    "print.caution.main-device",
                    "print.caution.rating",
                    "print.caution.auto-reset",
                    "print.caution.aid");

    private static final float INDENT = 14;

    private final Sheet sheet;

    CautionsSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        float below = (CAUTIONS.size() + 1) * Style.BODY.leading();
        Headings.drawSection(sheet, sheet.say("print.caution.title"), below);
        for (String caution : CAUTIONS) {
            sheet.pen().text(Style.BODY, "⚠", sheet.left(), sheet.y() - Style.BODY.ascent());
            sheet.paragraph(Style.BODY, sheet.say(caution), INDENT);
        }
    }
}
