package org.fusewright.jobs.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;

import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

import java.time.Instant;

/** A row of {@code job}: one machine in its newest revision. */
@Entity
@Table(name = "job")
public class JobRow {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public @Nullable Long id;

    public String reference = "";
    public String title = "";
    public String customer = "";
    public int revision;
    @Version public long version;

    @JdbcTypeCode(SqlTypes.JSON)
    public String document = "";

    @Column(name = "schema_version")
    public int schemaVersion;

    @Column(name = "created_at")
    public Instant createdAt = Instant.EPOCH;

    @Column(name = "changed_at")
    public Instant changedAt = Instant.EPOCH;

    @Column(name = "changed_by")
    public String changedBy = "";
}
