package org.fusewright.core.catalog;

/** Closes one empty cavity of a block whose terminals are of the same family. */
public record Plug(Item item, String family) implements Part {}
