package org.fusewright.counts;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.words.Text;

/** Pieces in a bag that may fill a line that is short, when a person agrees. */
public record PossibleSubstitute(PartNumber wanted, PartNumber offered, int pieces, Text reason) {}
