package org.fusewright.jobs.store;

import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

import java.util.List;

/** The rows of {@code job_revision}. */
public interface JobRevisionRows extends JpaRepository<JobRevisionRow, JobRevisionRow.Key> {
    List<JobRevisionRow> findByKeyJobIdOrderByKeyRevisionDesc(long jobId);

    /** Newest first, those up to a given revision. */
    @Query(
            """
            select row from JobRevisionRow row
            where row.key.jobId = :jobId and row.key.revision <= :upTo
            order by row.key.revision desc
            limit :limit
            """)
    List<JobRevisionRow> listUpTo(long jobId, int upTo, int limit);
}
