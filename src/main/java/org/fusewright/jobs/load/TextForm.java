package org.fusewright.jobs.load;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/** The texts that a field allows. */
public enum TextForm {
    /** A name that others refer to. */
    ID(40, "wrong.form.id") {
        @Override
        boolean allowsSigns(String text) {
            for (int i = 0; i < text.length(); i++) {
                char c = text.charAt(i);
                if (!isLetterOrDigit(c) && (i == 0 || "._-".indexOf(c) < 0)) {
                    return false;
                }
            }
            return !text.isEmpty();
        }
    },
    /** A text that must say something. */
    TITLE(120, "wrong.form.title") {
        @Override
        boolean allowsSigns(String text) {
            return FREE.allowsSigns(text) && !isSpaces(text);
        }
    },
    /** Any text, even none. */
    FREE(120, "wrong.form.free") {
        @Override
        boolean allowsSigns(String text) {
            int sign;
            for (int i = 0; i < text.length(); i += Character.charCount(sign)) {
                sign = text.codePointAt(i);
                if (isForbidden(sign)) {
                    return false;
                }
            }
            return true;
        }
    },
    /** A sentence or two that must say something. */
    PASSAGE(500, "wrong.form.passage") {
        @Override
        boolean allowsSigns(String text) {
            return TITLE.allowsSigns(text);
        }
    };

    private final int maxLength;
    private final Text words;

    TextForm(int maxLength, String key) {
        this.maxLength = maxLength;
        this.words = Phrase.of(key);
    }

    public Text words() {
        return words;
    }

    public boolean allows(String text) {
        return text.codePointCount(0, text.length()) <= maxLength && allowsSigns(text);
    }

    abstract boolean allowsSigns(String text);

    private static boolean isSpaces(String text) {
        int i = 0;
        while (i < text.length() && text.charAt(i) == ' ') {
            i++;
        }
        return i == text.length();
    }

    private static boolean isLetterOrDigit(int c) {
        return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9';
    }

    /**
     * Control characters, broken surrogates, and the signs that break lines or turn the direction
     * of writing.
     */
    private static boolean isForbidden(int c) {
        return c < 0x20
                || c >= 0x7f && c <= 0x9f
                || c >= 0x2028 && c <= 0x202e
                || c >= 0x2066 && c <= 0x2069
                || c >= 0xd800 && c <= 0xdfff;
    }
}
