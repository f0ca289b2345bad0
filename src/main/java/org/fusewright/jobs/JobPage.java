package org.fusewright.jobs;

import java.util.List;
import java.util.OptionalLong;

/**
 * Some jobs of a longer list.
 *
 * @param next what to ask after for the rest; empty at the end
 */
public record JobPage(List<JobSummary> jobs, OptionalLong next) {
    public JobPage {
        jobs = List.copyOf(jobs);
    }
}
