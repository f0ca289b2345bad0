package org.fusewright.jobs.store;

import org.springframework.data.jpa.repository.JpaRepository;

import java.util.List;

/** The rows of {@code job_revision}. */
public interface JobRevisionRows extends JpaRepository<JobRevisionRow, JobRevisionRow.Key> {
    List<JobRevisionRow> findByKeyJobIdOrderByKeyRevisionDesc(long jobId);
}
