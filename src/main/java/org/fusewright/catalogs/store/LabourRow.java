package org.fusewright.catalogs.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.core.quote.LabourTask;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;

@Entity
@Table(name = "labour_rate")
class LabourRow {

    @Id String code;
    String title;
    BigDecimal minutes;
    BigDecimal hourlyRate;
    String currency;

    protected LabourRow() {}

    LabourRow(LabourTask task) {
        code = task.code();
        title = task.title();
        minutes = task.minutes();
        hourlyRate = task.hourlyRate().getAmount();
        currency = task.hourlyRate().getCurrencyUnit().getCode();
    }

    LabourTask toTask() {
        return new LabourTask(
                code, title, minutes, BigMoney.of(CurrencyUnit.of(currency), hourlyRate));
    }
}
