package org.fusewright.counts;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.Comparison;

import java.util.List;
import java.util.Set;

/**
 * A kit from elsewhere beside its design.
 *
 * @param substitutes what could fill short lines, when a person agrees
 * @param unknown parts of the file that the catalog does not know
 */
public record FileCheck(
        BagDesign design,
        Comparison comparison,
        List<PossibleSubstitute> substitutes,
        Set<PartNumber> unknown) {
    public FileCheck {
        substitutes = List.copyOf(substitutes);
        unknown = Set.copyOf(unknown);
    }
}
