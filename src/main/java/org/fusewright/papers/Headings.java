package org.fusewright.papers;

/** Headings of sections and of groups within them. */
final class Headings {

    private static final float ABOVE_SECTION = 12;
    private static final float BELOW_SECTION = 4;
    private static final float ABOVE_GROUP = 7;
    private static final float BELOW_GROUP = 2;
    private static final String CONTINUED = " (continued)";

    private Headings() {}

    /** A section's heading, underlined over the full width. */
    static Table.Heading section(Sheet sheet, String text) {
        return new Lines(sheet, text, "");
    }

    /** A group's heading; {@code section} stands above it when it is the section's first. */
    static Table.Heading group(Sheet sheet, String section, String text) {
        return new Lines(sheet, section, text);
    }

    /** Draws a section's heading with room for at least so much below it. */
    static void drawSection(Sheet sheet, String text, float below) {
        Table.Heading heading = section(sheet, text);
        sheet.keep(Math.min(heading.height() + below, sheet.pageRoom()));
        heading.draw(false);
    }

    private record Lines(Sheet sheet, String section, String group) implements Table.Heading {

        @Override
        public float height() {
            float height = 0;
            if (!section.isEmpty()) {
                height += ABOVE_SECTION + Style.SECTION.leading() + BELOW_SECTION;
            }
            if (!group.isEmpty()) {
                int lines = Style.GROUP.wrap(group, sheet.width()).size();
                height += ABOVE_GROUP + lines * Style.GROUP.leading() + BELOW_GROUP;
            }
            return height;
        }

        @Override
        public void draw(boolean continued) {
            String suffix = continued ? CONTINUED : "";
            if (!section.isEmpty() && !(continued && !group.isEmpty())) {
                sheet.down(sheet.isFresh() ? 0 : ABOVE_SECTION);
                sheet.paragraph(Style.SECTION, section + suffix);
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
            if (!group.isEmpty()) {
                sheet.down(sheet.isFresh() ? 0 : ABOVE_GROUP);
                sheet.paragraph(Style.GROUP, group + suffix);
                sheet.down(BELOW_GROUP);
            }
        }
    }
}
