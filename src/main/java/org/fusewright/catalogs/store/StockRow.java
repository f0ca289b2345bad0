package org.fusewright.catalogs.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.catalogs.StockLevel;
import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;

@Entity
@Table(name = "stock_entry")
class StockRow {

    @Id String partNumber;
    BigDecimal minimum;

    protected StockRow() {}

    StockRow(StockLevel level) {
        partNumber = level.part().value();
        minimum = level.minimum();
    }

    PartNumber part() {
        return new PartNumber(partNumber);
    }

    BigDecimal minimum() {
        return minimum;
    }
}
