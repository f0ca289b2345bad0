package org.fusewright.jobs.store;

import org.fusewright.jobs.JobSummary;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;

/** Finds jobs by what stands in their texts. */
@Repository
public class JobSearch {
    /** So many letters the index holds together; fewer are in so many jobs that some soon come. */
    private static final int LEAST_INDEXED = 3;

    private static final String BY_INDEX =
            """
            and letter_groups(job_said(reference, title, customer)) @> letter_groups(:text)
            """;

    private final JdbcClient jdbc;

    JobSearch(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Jobs before an id, newest first. One statement, so it goes without the round trips of a
     * transaction of its own.
     *
     * @param text that is in their reference, title or customer, in lower case
     */
    public List<JobSummary> list(long before, String text, int limit) {
        if (text.indexOf('\0') >= 0) {
            return List.of(); // no text in the database can hold it
        }
        return jdbc.sql(
                        """
                        select id, reference, title, customer, revision, version, changed_at,
                               changed_by
                        from job
                        where id < :before %s
                          and strpos(job_said(reference, title, customer), :text) > 0
                        order by id desc
                        limit :limit
                        """
                                .formatted(text.length() < LEAST_INDEXED ? "" : BY_INDEX))
                .param("before", before)
                .param("text", text)
                .param("limit", limit)
                .query((row, _) -> summary(row))
                .list();
    }

    private static JobSummary summary(ResultSet row) throws SQLException {
        return new JobSummary(
                row.getLong("id"),
                row.getString("reference"),
                row.getString("title"),
                row.getString("customer"),
                row.getInt("revision"),
                row.getLong("version"),
                row.getObject("changed_at", OffsetDateTime.class).toInstant(),
                row.getString("changed_by"));
    }
}
