package org.fusewright.jobs.store;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.springframework.data.domain.Persistable;

import java.time.Instant;

/** A row of {@code job_revision}, never changed once written. */
@Entity
@Immutable
@Table(name = "job_revision")
public class JobRevisionRow implements Persistable<JobRevisionRow.Key> {
    /** Which revision of which job. */
    @Embeddable
    public record Key(@Column(name = "job_id") long jobId, int revision) {}

    @EmbeddedId public Key key = new Key(0, 0);

    @JdbcTypeCode(SqlTypes.JSON)
    public String document = "";

    @Column(name = "schema_version")
    public int schemaVersion;

    @Column(name = "changed_at")
    public Instant changedAt = Instant.EPOCH;

    @Column(name = "changed_by")
    public String changedBy = "";

    @Override
    public Key getId() {
        return key;
    }

    /** Whatever is saved is new: nobody needs to look for an older one. */
    @Override
    public boolean isNew() {
        return true;
    }
}
