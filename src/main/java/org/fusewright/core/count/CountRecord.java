package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A finished count: what was found, who answers for it, and how it stands to the newest design.
 *
 * @param titles names of the parts that belong to no line
 * @param weighings as they were done, the last one last
 * @param later what the job's newest revision needs otherwise; empty when the bag is of the newest
 */
public record CountRecord(
        long number,
        BagDesign design,
        Comparison comparison,
        Map<PartNumber, String> titles,
        List<Done> weighings,
        Optional<Later> later,
        Signature signature) {

    /** Who signed, when, and what they had to say. */
    public record Signature(String name, Instant at, String remark) {}

    /** A weighing and who did it. */
    public record Done(Weighing weighing, String by, Instant at) {}

    /**
     * A newer revision of the job.
     *
     * @param difference parts to add and to take back; empty when there is no kit for it
     */
    public record Later(int revision, Optional<BagDifference> difference) {}

    public CountRecord {
        titles = Map.copyOf(titles);
        weighings = List.copyOf(weighings);
    }
}
