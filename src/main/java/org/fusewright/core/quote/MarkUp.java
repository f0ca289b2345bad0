package org.fusewright.core.quote;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * What is added to cost to make a selling price: percent of the cost. (25 % on top of the cost is
 * not a margin of 25 % of the price, but of 20 %.)
 *
 * @param part for this part only
 * @param group for all lines of this group; with neither, for everything that no other row names
 */
public record MarkUp(Optional<PartNumber> part, Optional<String> group, BigDecimal percent) {

    /** The group of the lines for bench work, beside the groups of parts. */
    public static final String LABOUR = "labour";

    public MarkUp {
        if (part.isPresent() && group.isPresent()) {
            throw new IllegalArgumentException("name a part or a group, not both");
        }
        if (percent.signum() < 0) {
            throw new IllegalArgumentException("a mark-up must not be negative");
        }
        percent = Percent.plain(percent);
    }
}
