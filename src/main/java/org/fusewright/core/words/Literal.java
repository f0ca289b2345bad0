package org.fusewright.core.words;

import java.nio.charset.StandardCharsets;

/** A piece of text as the bundle has it, ready in UTF-8 too: documents say each one many times. */
public final class Literal {
    private final String text;
    private final byte[] utf8;
    private final boolean isPlain;

    Literal(String text) {
        this.text = text;
        this.utf8 = text.getBytes(StandardCharsets.UTF_8);
        this.isPlain = text.chars().noneMatch(sign -> sign < ' ' || sign == '"' || sign == '\\');
    }

    /** Whether it has no quote, no backslash and no control character, which documents escape. */
    public boolean isPlain() {
        return isPlain;
    }

    public int utf8Length() {
        return utf8.length;
    }

    /** Copies the text's UTF-8 to where it belongs in a document. */
    public void copyTo(byte[] document, int at) {
        System.arraycopy(utf8, 0, document, at, utf8.length);
    }

    @Override
    public String toString() {
        return text;
    }
}
