package org.fusewright.jobs;

import java.util.List;
import java.util.Optional;

/**
 * Two revisions of a job beside each other.
 *
 * @param fields what differs between their documents
 * @param kit what differs between their kits; empty when one of them has none
 */
public record RevisionComparison(
        JobRevision from, JobRevision to, List<JobChange> fields, Optional<KitDifference> kit) {
    public RevisionComparison {
        fields = List.copyOf(fields);
    }
}
