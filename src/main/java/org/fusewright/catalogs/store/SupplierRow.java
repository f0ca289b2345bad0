package org.fusewright.catalogs.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.catalogs.Supplier;

@Entity
@Table(name = "supplier")
class SupplierRow {

    @Id String code;

    @Column(name = "name")
    String title;

    protected SupplierRow() {}

    SupplierRow(Supplier supplier) {
        code = supplier.code();
        title = supplier.title();
    }

    Supplier toSupplier() {
        return new Supplier(code, title);
    }
}
