package org.fusewright.catalogs.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.core.quote.TaxKind;

import java.math.BigDecimal;

@Entity
@Table(name = "tax_kind")
class TaxRow {

    @Id String code;
    String title;
    BigDecimal percent;
    String note;

    protected TaxRow() {}

    TaxRow(TaxKind tax) {
        code = tax.code();
        title = tax.title();
        percent = tax.percent();
        note = tax.note();
    }

    TaxKind toKind() {
        return new TaxKind(code, title, percent, note);
    }
}
