package org.fusewright.catalogs.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.catalogs.Supplier;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;
import java.util.Optional;

@Entity
@Table(name = "supplier")
class SupplierRow {

    @Id String code;

    @Column(name = "name")
    String title;

    @Nullable BigDecimal minimumOrder;
    @Nullable String minimumCurrency;

    protected SupplierRow() {}

    SupplierRow(Supplier supplier) {
        code = supplier.code();
        title = supplier.title();
        minimumOrder = supplier.minimumOrder().map(Money::getAmount).orElse(null);
        minimumCurrency =
                supplier.minimumOrder()
                        .map(least -> least.getCurrencyUnit().getCode())
                        .orElse(null);
    }

    Supplier toSupplier() {
        Optional<Money> least =
                minimumOrder == null
                        ? Optional.empty()
                        : Optional.of(
                                Money.of(
                                        CurrencyUnit.of(Objects.requireNonNull(minimumCurrency)),
                                        minimumOrder,
                                        RoundingMode.HALF_UP));
        return new Supplier(code, title, least);
    }
}
