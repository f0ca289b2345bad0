package org.fusewright.catalogs.store;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import java.time.Instant;

@Entity
@Table(name = "catalog_release")
class ReleaseRow {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    long id;

    String version;
    Instant importedAt;

    protected ReleaseRow() {}

    ReleaseRow(String version, Instant importedAt) {
        this.version = version;
        this.importedAt = importedAt;
    }
}
