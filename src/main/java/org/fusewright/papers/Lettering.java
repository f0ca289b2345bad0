package org.fusewright.papers;

import java.util.ArrayList;
import java.util.List;

/** A font at a size, and how text set in it breaks into lines. */
record Lettering(PaperFont font, float size) {

    private static final float LEADING = 1.24f;
    private static final float SMALLEST = 5;
    private static final float STEP = 0.5f;
    private static final String ELLIPSIS = "…";
    private static final String BREAK_AFTER = "/,;:_·";

    /** Distance from one baseline to the next. */
    float leading() {
        return size * LEADING;
    }

    /** From the top of a line to its baseline. */
    float ascent() {
        return size * 0.96f;
    }

    /** Width of a printable text. */
    float width(String printable) {
        float width = 0;
        for (int i = 0; i < printable.length(); ) {
            int sign = printable.codePointAt(i);
            width += font.width(sign);
            i += Character.charCount(sign);
        }
        return width * size;
    }

    /**
     * Breaks at spaces and after joining signs, though not at the dashes of part numbers nor within
     * a figure; a word that is longer than a line, anywhere. At least one line.
     */
    List<String> wrap(String text, float width) {
        String printable = font.printable(text);
        List<String> lines = new ArrayList<>();
        int from = 0;
        while (from < printable.length()) {
            int to = lineEnd(printable, from, width);
            lines.add(printable.substring(from, to).strip());
            from = to;
            while (from < printable.length() && printable.charAt(from) == ' ') {
                from++;
            }
        }
        return lines.isEmpty() ? List.of("") : lines;
    }

    /** Wraps to at most so many lines; the last one then ends in an ellipsis. */
    List<String> wrap(String text, float width, int most) {
        List<String> lines = wrap(text, width);
        if (lines.size() <= most) {
            return lines;
        }
        List<String> kept = new ArrayList<>(lines.subList(0, most - 1));
        kept.add(clip(lines.get(most - 1) + " " + lines.get(most), width));
        return kept;
    }

    /** This lettering, or a smaller one in which a printable text fits on one line. */
    Lettering fitting(String printable, float room) {
        Lettering smaller = this;
        while (smaller.width(printable) > room && smaller.size > SMALLEST) {
            smaller = new Lettering(font, smaller.size - STEP);
        }
        return smaller;
    }

    /** Width of the longest word, which a line must have to break the text only between words. */
    float widestWord(String text) {
        float widest = 0;
        for (String word : font.printable(text).split(" ")) {
            widest = Math.max(widest, width(word));
        }
        return widest;
    }

    /** The text on one line, cut with an ellipsis when it is too wide. */
    String clip(String text, float width) {
        String printable = font.printable(text);
        if (width(printable) <= width) {
            return printable;
        }
        int end = fitting(printable, 0, width - width(ELLIPSIS));
        return printable.substring(0, end).strip() + ELLIPSIS;
    }

    private int lineEnd(String text, int from, float width) {
        int fits = fitting(text, from, width);
        if (fits == text.length() || text.charAt(fits) == ' ') {
            return fits;
        }
        for (int end = fits; end > from; end--) {
            char before = text.charAt(end - 1);
            if (before == ' '
                    || (BREAK_AFTER.indexOf(before) >= 0 && !isDecimalSign(text, end - 1))) {
                return end;
            }
        }
        return fits;
    }

    /** Whether a comma stands between two digits. */
    private static boolean isDecimalSign(String text, int at) {
        return text.charAt(at) == ','
                && at > 0
                && at + 1 < text.length()
                && Character.isDigit(text.charAt(at - 1))
                && Character.isDigit(text.charAt(at + 1));
    }

    /** End of the longest part from {@code from} on that fits; at least one sign. */
    private int fitting(String text, int from, float width) {
        float used = 0;
        int at = from;
        while (at < text.length()) {
            int sign = text.codePointAt(at);
            used += font.width(sign) * size;
            if (used > width && at > from) {
                return at;
            }
            at += Character.charCount(sign);
        }
        return at;
    }
}
