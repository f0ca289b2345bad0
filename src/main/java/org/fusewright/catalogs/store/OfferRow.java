package org.fusewright.catalogs.store;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderBy;
import jakarta.persistence.Table;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.PartNumber;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

@Entity
@Table(name = "offer")
class OfferRow {

    @Id long id;
    String supplierCode;
    String partNumber;
    int packSize;
    String currency;
    int leadTimeDays;

    @ElementCollection(fetch = FetchType.LAZY)
    @CollectionTable(name = "offer_price", joinColumns = @JoinColumn(name = "offer_id"))
    @OrderBy("fromQuantity")
    List<Price> prices = new ArrayList<>();

    @Embeddable
    static class Price {

        int fromQuantity;
        BigDecimal unitPrice;

        protected Price() {}

        Price(Offer.PriceBreak priceBreak) {
            fromQuantity = priceBreak.fromQuantity();
            unitPrice = priceBreak.unitPrice().getAmount();
        }
    }

    protected OfferRow() {}

    OfferRow(long id, Offer offer) {
        this.id = id;
        supplierCode = offer.supplier();
        partNumber = offer.part().value();
        packSize = offer.packSize();
        currency = offer.currency().getCode();
        leadTimeDays = offer.leadTimeDays();
        offer.breaks().forEach(priceBreak -> prices.add(new Price(priceBreak)));
    }

    Offer toOffer() {
        CurrencyUnit unit = CurrencyUnit.of(currency);
        List<Offer.PriceBreak> breaks =
                prices.stream()
                        .map(
                                price ->
                                        new Offer.PriceBreak(
                                                price.fromQuantity,
                                                BigMoney.of(unit, price.unitPrice)))
                        .toList();
        return new Offer(supplierCode, new PartNumber(partNumber), packSize, breaks, leadTimeDays);
    }
}
