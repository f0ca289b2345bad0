package org.fusewright.core.words;

import java.util.List;

/** Texts one after the other, with the same sign between all of them. */
record Series(List<? extends Text> texts, String between) implements Text {
    Series {
        texts = List.copyOf(texts);
    }
}
