package org.fusewright.core.words;

/** A text that is the same in each language: a name, a part number, what a person typed. */
record Verbatim(String text) implements Text {}
