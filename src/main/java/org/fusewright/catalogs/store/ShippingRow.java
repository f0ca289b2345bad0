package org.fusewright.catalogs.store;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

import org.fusewright.core.quote.ShippingClass;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;

@Entity
@Table(name = "shipping_class")
class ShippingRow {

    @Embeddable
    record Key(String code, String currency) {}

    @EmbeddedId Key key;
    String title;

    @Column(name = "up_to_g")
    int upToG;

    BigDecimal price;

    protected ShippingRow() {}

    ShippingRow(ShippingClass shipping) {
        key = new Key(shipping.code(), shipping.price().getCurrencyUnit().getCode());
        title = shipping.title();
        upToG = shipping.upToG();
        price = shipping.price().getAmount();
    }

    ShippingClass toClass() {
        return new ShippingClass(
                key.code(), title, upToG, BigMoney.of(CurrencyUnit.of(key.currency()), price));
    }
}
