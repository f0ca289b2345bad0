package org.fusewright.papers;

import org.openpdf.text.pdf.BaseFont;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;

/**
 * A typeface that is embedded in every paper, with the widths of its signs. The writer leaves out a
 * sign that the font lacks without a word; here such a sign becomes a visible substitute.
 */
final class PaperFont {

    static final PaperFont REGULAR = load("DejaVuSans.ttf");
    static final PaperFont BOLD = load("DejaVuSans-Bold.ttf");

    /** Stands for every sign that cannot be printed. */
    static final char SUBSTITUTE = '\uFFFD';

    /** Holds together what belongs together, such as a quantity and its part. */
    static final char NO_BREAK_SPACE = '\u00A0';

    private static final int PLANE = 0x10000;
    private static final short MISSING = -1;

    private final BaseFont base;
    private final short[] widths = new short[PLANE];

    private PaperFont(BaseFont base) {
        this.base = base;
        for (int sign = 0; sign < PLANE; sign++) {
            widths[sign] =
                    isPrintable(sign) && base.charExists(sign)
                            ? (short) base.getWidth(sign)
                            : MISSING;
        }
        if (!holds(SUBSTITUTE)) {
            throw new IllegalStateException("the font lacks the substitute sign");
        }
    }

    private static PaperFont load(String file) {
        try (InputStream in = PaperFont.class.getResourceAsStream("/fonts/" + file)) {
            if (in == null) {
                throw new IllegalStateException("no font " + file);
            }
            BaseFont base =
                    BaseFont.createFont(
                            file,
                            BaseFont.IDENTITY_H,
                            BaseFont.EMBEDDED,
                            BaseFont.NOT_CACHED,
                            in.readAllBytes(),
                            null);
            base.setSecureRandom(new FixedRandom());
            base.setIncludeCidSet(false);
            return new PaperFont(base);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    BaseFont base() {
        return base;
    }

    /**
     * Whether the sign has a glyph and stands for itself: no control, mark of direction or half.
     */
    boolean holds(int sign) {
        return sign < PLANE ? widths[sign] != MISSING : isPrintable(sign) && base.charExists(sign);
    }

    /** Width of a sign that the font {@link #holds}, at a size of one point. */
    float width(int sign) {
        return (sign < PLANE ? widths[sign] : base.getWidth(Character.toString(sign))) / 1000f;
    }

    /**
     * The text in signs that this font holds: composed, white space as one space, and {@link
     * #SUBSTITUTE} for what cannot be printed.
     */
    String printable(String text) {
        if (isPlain(text)) {
            return text;
        }
        String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
        StringBuilder printable = new StringBuilder(composed.length());
        for (int i = 0; i < composed.length(); ) {
            int sign = composed.codePointAt(i);
            append(printable, sign);
            i += Character.charCount(sign);
        }
        return printable.toString().strip();
    }

    private void append(StringBuilder printable, int sign) {
        if (sign != NO_BREAK_SPACE
                && (Character.isWhitespace(sign) || Character.isSpaceChar(sign))) {
            if (!printable.isEmpty() && printable.charAt(printable.length() - 1) != ' ') {
                printable.append(' ');
            }
        } else {
            printable.appendCodePoint(holds(sign) ? sign : SUBSTITUTE);
        }
    }

    /** Short cut for the usual text: Latin and symbols, without doubled or outer spaces. */
    private boolean isPlain(String text) {
        char before = ' ';
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            boolean plain = sign == ' ' ? before != ' ' : isComposed(sign) && holds(sign);
            if (!plain) {
                return false;
            }
            before = sign;
        }
        return before != ' ' || text.isEmpty();
    }

    /** Signs that do not compose with others and are no common space. */
    private static boolean isComposed(char sign) {
        boolean latin = sign > ' ' && sign <= '\u024F';
        boolean symbol = sign >= '\u2600' && sign <= '\u27BF';
        return latin || symbol;
    }

    private static boolean isPrintable(int sign) {
        return switch (Character.getType(sign)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR ->
                    false;
            default -> !isVariationSelector(sign);
        };
    }

    private static boolean isVariationSelector(int sign) {
        return (sign >= 0xFE00 && sign <= 0xFE0F) || (sign >= 0xE0100 && sign <= 0xE01EF);
    }
}
