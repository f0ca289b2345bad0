package org.fusewright.catalogs.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quote.MarkUp;
import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.util.Optional;

@Entity
@Table(name = "mark_up")
class MarkUpRow {

    @Id long id;
    @Nullable String part;
    @Nullable String lineGroup;
    BigDecimal percent;

    protected MarkUpRow() {}

    MarkUpRow(long id, MarkUp markUp) {
        this.id = id;
        part = markUp.part().map(PartNumber::value).orElse(null);
        lineGroup = markUp.group().orElse(null);
        percent = markUp.percent();
    }

    MarkUp toMarkUp() {
        return new MarkUp(
                Optional.ofNullable(part).map(PartNumber::new),
                Optional.ofNullable(lineGroup),
                percent);
    }
}
