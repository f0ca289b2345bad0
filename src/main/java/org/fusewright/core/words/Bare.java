package org.fusewright.core.words;

/**
 * A figure without its unit.
 *
 * @param figure an {@link Amount} or an {@link Exact}
 */
record Bare(Text figure) implements Text {}
