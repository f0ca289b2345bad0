package org.fusewright.core.words;

/** The figure of an amount, without its unit. */
record Bare(Amount amount) implements Text {}
