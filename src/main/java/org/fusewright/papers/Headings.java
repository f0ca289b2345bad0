package org.fusewright.papers;

/** Headings of sections and of groups within them. */
final class Headings {

    private static final float ABOVE_SECTION = 12;
    private static final float BELOW_SECTION = 4;
    private static final float ABOVE_GROUP = 6;
    private static final float BELOW_GROUP = 2;

    private Headings() {}

    /** A section's heading, underlined over the full width. */
    static Table.Heading section(Sheet sheet, String text) {
        return new Section(sheet, text);
    }

    /** A group's heading. */
    static Table.Heading group(Sheet sheet, String text) {
        return group(sheet, text, 0);
    }

    /** A group's heading with so much room before it. */
    static Table.Heading group(Sheet sheet, String text, float indent) {
        return new Group(sheet, text, indent);
    }

    /** Draws a section's heading with room for at least so much below it. */
    static void drawSection(Sheet sheet, String text, float below) {
        Table.Heading heading = section(sheet, text);
        sheet.keep(Math.min(heading.height() + below, sheet.pageRoom()));
        heading.draw(false);
    }

    private static String continued(Sheet sheet, String text) {
        return sheet.say("print.heading.continued", text);
    }

    private record Section(Sheet sheet, String text) implements Table.Heading {

        @Override
        public float height() {
            return ABOVE_SECTION + Style.SECTION.leading() + BELOW_SECTION;
        }

        @Override
        public void draw(boolean continued) {
            sheet.down(sheet.isFresh() ? 0 : ABOVE_SECTION);
            sheet.paragraph(Style.SECTION, continued ? continued(sheet, text) : text);
            sheet.pen()
                    .line(
                            Style.THICK,
                            Style.INK,
                            sheet.left(),
                            sheet.y(),
                            sheet.right(),
                            sheet.y());
            sheet.down(BELOW_SECTION);
        }
    }

    private record Group(Sheet sheet, String text, float indent) implements Table.Heading {

        @Override
        public float height() {
            int lines = Style.GROUP.wrap(continued(sheet, text), sheet.width() - indent).size();
            return ABOVE_GROUP + lines * Style.GROUP.leading() + BELOW_GROUP;
        }

        @Override
        public void draw(boolean continued) {
            sheet.down(sheet.isFresh() ? 0 : ABOVE_GROUP);
            sheet.paragraph(Style.GROUP, continued ? continued(sheet, text) : text, indent);
            sheet.down(BELOW_GROUP);
        }
    }
}
