package org.fusewright.papers;

/** Texts on their way into a spreadsheet, which takes some of them for formulas and runs those. */
public final class Spreadsheet {
    private static final String FORMULA_STARTS = "=+-@\t\r\n";

    private Spreadsheet() {}

    /** The text with a leading apostrophe where a spreadsheet could take it for a formula. */
    public static String defused(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
