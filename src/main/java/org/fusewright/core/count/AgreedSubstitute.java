package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;

/**
 * Pieces of one part that a person agreed to take in place of another one.
 *
 * @param massG of one of these pieces
 * @param reason the rule that allows it
 */
public record AgreedSubstitute(
        PartNumber wanted,
        PartNumber offered,
        String offeredTitle,
        CountedKind kind,
        double massG,
        int pieces,
        String reason,
        String agreedBy) {

    public AgreedSubstitute {
        if (pieces < 1) {
            throw new IllegalArgumentException("agreed are 1 or more pieces, not " + pieces);
        }
    }
}
