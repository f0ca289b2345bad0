package org.fusewright.jobs;

import org.fusewright.core.job.Job;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.jobs.store.JobRevisionRow;
import org.fusewright.jobs.store.JobRevisionRows;
import org.fusewright.jobs.store.JobRow;
import org.fusewright.jobs.store.JobRows;
import org.fusewright.jobs.store.JobSearch;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The jobs that are kept. Each change makes a new revision, and names the version that it starts
 * from: one that somebody else has changed since stays as it is.
 */
@Service
public class Jobs {
    /** Who keeps what nobody in particular asked for, such as the sample jobs. */
    private static final String SHOP = "shop";

    private final JobRows rows;
    private final JobSearch search;
    private final JobRevisionRows revisions;
    private final InstantSource clock;

    @Autowired
    Jobs(JobRows rows, JobSearch search, JobRevisionRows revisions) {
        this(rows, search, revisions, InstantSource.system());
    }

    Jobs(JobRows rows, JobSearch search, JobRevisionRows revisions, InstantSource clock) {
        this.rows = rows;
        this.search = search;
        this.revisions = revisions;
        this.clock = clock;
    }

    /**
     * Jobs with a text in their reference, title or customer, newest first.
     *
     * @param after where an earlier list ended
     */
    public JobPage list(String text, OptionalLong after, int limit) {
        List<JobSummary> found =
                search.list(
                        after.orElse(Long.MAX_VALUE),
                        text.strip().toLowerCase(Locale.ROOT),
                        limit + 1);
        List<JobSummary> jobs = found.stream().limit(limit).toList();
        return new JobPage(
                jobs,
                found.size() > limit ? OptionalLong.of(jobs.getLast().id()) : OptionalLong.empty());
    }

    /** Whether any job was ever kept, even when all are deleted by now. */
    @Transactional(readOnly = true)
    public boolean isEverUsed() {
        return rows.isAnyIdGiven();
    }

    @Transactional(readOnly = true)
    public Optional<StoredJob> find(long id) {
        return rows.findById(id).map(Jobs::stored);
    }

    /**
     * @throws UnknownJobException when there is none
     */
    @Transactional(readOnly = true)
    public StoredJob get(long id) {
        return stored(row(id));
    }

    /** Keeps a job that nobody in particular asked for; else as below. */
    @Transactional
    public StoredJob create(JobReading reading) {
        return create(reading, SHOP);
    }

    /**
     * @param by who makes it
     * @throws MalformedJobException when the job was read with problems
     * @throws ReferenceTakenException when another job has its reference
     */
    @Transactional
    public StoredJob create(JobReading reading, String by) {
        JobRow row = new JobRow();
        row.createdAt = clock.instant().truncatedTo(ChronoUnit.MICROS);
        return write(row, reading, by);
    }

    /**
     * @param version the version that the change starts from
     * @param by who makes it
     * @throws UnknownJobException when there is no such job
     * @throws StaleJobException when it has another version by now
     * @throws MalformedJobException when the job was read with problems
     * @throws ReferenceTakenException when another job has its new reference
     */
    @Transactional
    public StoredJob change(long id, long version, JobReading reading, String by) {
        return write(rowAt(id, version), reading, by);
    }

    /** As for {@link #change}. */
    @Transactional
    public void delete(long id, long version) {
        rows.delete(rowAt(id, version));
        rows.flush();
    }

    /** All revisions of a job, newest first. */
    @Transactional(readOnly = true)
    public List<JobRevision> listRevisions(long id) {
        row(id);
        return revisions.findByKeyJobIdOrderByKeyRevisionDesc(id).stream()
                .map(Jobs::revision)
                .toList();
    }

    /**
     * Some revisions of a job, newest first.
     *
     * @param upTo the newest one to list
     */
    @Transactional(readOnly = true)
    public List<JobRevision> listRevisions(long id, int upTo, int limit) {
        row(id);
        return revisions.listUpTo(id, upTo, limit).stream().map(Jobs::revision).toList();
    }

    /**
     * @throws UnknownJobException when there is no such job, or it has no such revision
     */
    @Transactional(readOnly = true)
    public JobRevision getRevision(long id, int revision) {
        return revisions
                .findById(new JobRevisionRow.Key(id, revision))
                .map(Jobs::revision)
                .orElseThrow(() -> new UnknownJobException(id));
    }

    private static JobRevision revision(JobRevisionRow row) {
        return new JobRevision(
                row.key.revision(), row.changedAt, row.changedBy, DocumentText.parse(row.document));
    }

    private StoredJob write(JobRow row, JobReading reading, String by) {
        Job job = reading.getJob();
        if (!job.reference().equals(row.reference) && rows.existsByReference(job.reference())) {
            throw new ReferenceTakenException(job.reference());
        }
        row.reference = job.reference();
        row.title = job.title();
        row.customer = job.customer();
        row.document = DocumentText.print(reading.document());
        row.schemaVersion = DocumentText.SCHEMA_VERSION;
        row.revision++;
        row.changedAt = clock.instant().truncatedTo(ChronoUnit.MICROS);
        row.changedBy = by;
        try {
            rows.saveAndFlush(row);
        } catch (OptimisticLockingFailureException e) {
            throw new StaleJobException(row.id);
        } catch (DataIntegrityViolationException e) {
            // Somebody took the reference between the look-up and here.
            throw new ReferenceTakenException(job.reference());
        }
        JobRevisionRow revision = new JobRevisionRow();
        revision.key = new JobRevisionRow.Key(row.id, row.revision);
        revision.document = row.document;
        revision.schemaVersion = row.schemaVersion;
        revision.changedAt = row.changedAt;
        revision.changedBy = row.changedBy;
        revisions.save(revision);
        return stored(row);
    }

    private JobRow row(long id) {
        return rows.findById(id).orElseThrow(() -> new UnknownJobException(id));
    }

    private JobRow rowAt(long id, long version) {
        JobRow row = row(id);
        if (row.version != version) {
            throw new StaleJobException(id);
        }
        return row;
    }

    private static StoredJob stored(JobRow row) {
        return new StoredJob(
                row.id,
                row.reference,
                row.title,
                row.customer,
                row.revision,
                row.version,
                DocumentText.parse(row.document),
                row.createdAt,
                row.changedAt,
                row.changedBy);
    }
}
