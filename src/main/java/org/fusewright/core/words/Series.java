package org.fusewright.core.words;

import java.util.List;

/** Texts one after the other, with the same sign between all of them. */
record Series(List<? extends Text> texts, Literal between) implements Text {
    static final Literal SPACE = new Literal(" ");
    static final Literal SEMICOLON = new Literal("; ");
    static final Literal COMMA = new Literal(", ");

    Series {
        texts = List.copyOf(texts);
    }
}
