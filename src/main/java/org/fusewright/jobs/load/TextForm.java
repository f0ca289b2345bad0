package org.fusewright.jobs.load;

/** The texts that a field allows. */
public enum TextForm {
    /** A name that others refer to. */
    ID(
            40,
            "1 to 40 letters, digits, dots, dashes or underscores,"
                    + " starting with a letter or digit") {
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
    TITLE(120, "a text of 1 to 120 characters, no control characters") {
        @Override
        boolean allowsSigns(String text) {
            return FREE.allowsSigns(text) && !isSpaces(text);
        }
    },
    /** Any text, even none. */
    FREE(120, "a text of up to 120 characters, no control characters") {
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
    PASSAGE(500, "a text of 1 to 500 characters, no control characters") {
        @Override
        boolean allowsSigns(String text) {
            return TITLE.allowsSigns(text);
        }
    };

    private final int maxLength;
    private final String words;

    TextForm(int maxLength, String words) {
        this.maxLength = maxLength;
        this.words = words;
    }

    public String words() {
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
