package org.fusewright.papers;

import java.util.List;

/** The cautions that every paper carries. */
final class CautionsSection {

    static final List<String> CAUTIONS =
            List.of(
                    "Disconnect the battery first.",
                    "Fit the main device close to the source.",
                    "Never raise a rating to stop a device from tripping.",
                    "Auto-reset devices re-energise without warning.",
                    "Calculations are an aid: local codes, the makers' data and licensed practice"
                            + " come first; a competent person checks the finished machine.");

    private static final float INDENT = 14;

    private final Sheet sheet;

    CautionsSection(Sheet sheet) {
        this.sheet = sheet;
    }

    void print() {
        float below = (CAUTIONS.size() + 1) * Style.BODY.leading();
        Headings.drawSection(sheet, "Cautions", below);
        for (String caution : CAUTIONS) {
            sheet.pen().text(Style.BODY, "⚠", sheet.left(), sheet.y() - Style.BODY.ascent());
            sheet.paragraph(Style.BODY, caution, INDENT);
        }
    }
}
