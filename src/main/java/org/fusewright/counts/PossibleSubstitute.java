package org.fusewright.counts;

import org.fusewright.core.catalog.PartNumber;

/** Pieces in a bag that may fill a line that is short, when a person agrees. */
public record PossibleSubstitute(
        PartNumber wanted, PartNumber offered, int pieces, String reason) {}
