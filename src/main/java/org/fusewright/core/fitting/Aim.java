package org.fusewright.core.fitting;

/** What an arrangement is best in; the other of the two decides among equals. */
public enum Aim {
    LEAST_COST,
    FEWEST_BLOCKS
}
