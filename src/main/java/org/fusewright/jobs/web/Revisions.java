package org.fusewright.jobs.web;

import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.JobChange;
import org.fusewright.jobs.JobDifference;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.JobRevision;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.KitDifference;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.RevisionComparison;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.springframework.stereotype.Component;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The revisions of a job, what each of them changed, and what each would be today. */
@Component
class Revisions {
    private final Jobs jobs;
    private final Kits kits;

    Revisions(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /**
     * A revision in the list.
     *
     * @param changes what it changed of the one before; nothing for the first
     */
    record Entry(JobRevision revision, List<JobChange> changes) {}

    /**
     * Newest first.
     *
     * @param upTo the newest one to list
     */
    List<Entry> list(long id, int upTo, int limit) {
        return entries(jobs.listRevisions(id, upTo, limit + 1), limit);
    }

    /** All of them, newest first. */
    List<Entry> list(long id) {
        return entries(jobs.listRevisions(id), Integer.MAX_VALUE);
    }

    private static List<Entry> entries(List<JobRevision> revisions, int limit) {
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < Math.min(limit, revisions.size()); i++) {
            boolean first = i + 1 == revisions.size();
            entries.add(
                    new Entry(
                            revisions.get(i),
                            first
                                    ? List.of()
                                    : JobDifference.list(
                                            revisions.get(i + 1).document(),
                                            revisions.get(i).document())));
        }
        return entries;
    }

    /** The job as it was. */
    StoredJob jobAt(StoredJob job, JobRevision revision) {
        JobReading reading = JobReader.read(revision.document());
        return new StoredJob(
                job.id(),
                reading.job().reference(),
                reading.job().title(),
                reading.job().customer(),
                revision.revision(),
                job.version(),
                revision.document(),
                job.createdAt(),
                revision.changedAt(),
                revision.changedBy());
    }

    /**
     * @throws org.fusewright.jobs.UnknownJobException when one of them is not there
     */
    RevisionComparison compare(long id, int from, int to) {
        JobRevision before = jobs.getRevision(id, from);
        JobRevision after = jobs.getRevision(id, to);
        return new RevisionComparison(
                before,
                after,
                JobDifference.list(before.document(), after.document()),
                plan(before)
                        .flatMap(old -> plan(after).map(now -> KitDifference.between(old, now))));
    }

    private Optional<Kit> plan(JobRevision revision) {
        try {
            return Optional.of(kits.plan(JobReader.read(revision.document())));
        } catch (MalformedJobException notOfThisCatalog) {
            return Optional.empty();
        }
    }

    /**
     * Makes a new revision that says what an earlier one said.
     *
     * @param version the version that it starts from
     * @throws MalformedJobException when that cannot be planned from the catalog of today
     */
    StoredJob restore(long id, int revision, long version, String by) {
        JobReading reading = JobReader.read(jobs.getRevision(id, revision).document());
        kits.plan(reading);
        return jobs.change(id, version, reading, by);
    }
}
