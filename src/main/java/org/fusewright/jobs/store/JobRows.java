package org.fusewright.jobs.store;

import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.NativeQuery;
import org.springframework.data.jpa.repository.Query;

import java.util.Collection;
import java.util.List;

/** The rows of {@code job}. */
public interface JobRows extends JpaRepository<JobRow, Long> {
    boolean existsByReference(String reference);

    /** A job's newest revision. */
    interface Newest {
        long getId();

        int getRevision();
    }

    /** Those of the jobs that are there. */
    @Query("select job.id as id, job.revision as revision from JobRow job where job.id in :ids")
    List<Newest> listNewest(Collection<Long> ids);

    /** The sequence of ids remembers rows that are deleted by now. */
    @NativeQuery("select pg_sequence_last_value(pg_get_serial_sequence('job', 'id')) is not null")
    boolean isAnyIdGiven();
}
