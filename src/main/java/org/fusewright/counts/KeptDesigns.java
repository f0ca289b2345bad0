package org.fusewright.counts;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.JobRevision;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.UnknownJobException;
import org.fusewright.jobs.load.JobReader;
import org.springframework.stereotype.Component;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Plans the kits of kept jobs, in any of their revisions. */
@Component
class KeptDesigns {
    private final Jobs jobs;
    private final Kits kits;

    KeptDesigns(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /** A kit and the revision that it was planned from. */
    record Design(Kit kit, int revision) {}

    /**
     * @param revision empty for the newest
     * @throws MalformedJobException when there is no such job or revision, or no kit for it
     */
    Design plan(long jobId, OptionalInt revision) {
        List<JobRevision> revisions = listRevisions(jobId);
        if (revisions.isEmpty()) {
            throw refused("/jobId", "wrong.no-job", jobId);
        }
        int wanted = revision.orElse(revisions.getFirst().revision());
        return revisions.stream()
                .filter(kept -> kept.revision() == wanted)
                .findAny()
                .map(this::plan)
                .orElseThrow(
                        () ->
                                refused(
                                        "/revision",
                                        "wrong.no-revision",
                                        revisions.getFirst().revision(),
                                        wanted));
    }

    /** The newest revision's number; empty when the job is deleted. */
    OptionalInt findNewestRevision(long jobId) {
        List<JobRevision> revisions = listRevisions(jobId);
        return revisions.isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(revisions.getFirst().revision());
    }

    /** The kit of the newest revision; empty when the catalog of today has none for it. */
    Optional<Kit> findNewestKit(long jobId) {
        try {
            return Optional.of(plan(jobId, OptionalInt.empty()).kit());
        } catch (MalformedJobException e) {
            return Optional.empty();
        }
    }

    private Design plan(JobRevision kept) {
        return new Design(kits.plan(JobReader.read(kept.document())), kept.revision());
    }

    private List<JobRevision> listRevisions(long jobId) {
        try {
            return jobs.listRevisions(jobId);
        } catch (UnknownJobException e) {
            return List.of();
        }
    }

    private static MalformedJobException refused(String pointer, String key, Object... values) {
        return new MalformedJobException(List.of(JobProblem.of(pointer, key, values)));
    }
}
