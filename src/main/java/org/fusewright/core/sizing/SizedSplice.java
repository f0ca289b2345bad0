package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Splice;

/** A splice with its part and the number of leads that meet in it. */
public record SizedSplice(String id, Splice part, int leads) {}
