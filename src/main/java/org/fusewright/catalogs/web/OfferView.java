package org.fusewright.catalogs.web;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** One supplier's offer as pages and callers see it. */
public record OfferView(
        String supplier,
        String supplierTitle,
        int packSize,
        String currency,
        List<Break> breaks,
        int leadTimeDays) {

    /** The price of one piece or metre from so many on. */
    public record Break(int fromQuantity, BigDecimal unitPrice) {}

    static List<OfferView> listFor(PartNumber part, CatalogContent content) {
        Map<String, String> titles =
                content.suppliers().stream()
                        .collect(Collectors.toMap(Supplier::code, Supplier::title));
        return content.catalog().listOffers(part).stream()
                .map(offer -> of(offer, titles.getOrDefault(offer.supplier(), offer.supplier())))
                .toList();
    }

    private static OfferView of(Offer offer, String supplierTitle) {
        return new OfferView(
                offer.supplier(),
                supplierTitle,
                offer.packSize(),
                offer.currency().getCode(),
                offer.breaks().stream()
                        .map(b -> new Break(b.fromQuantity(), b.unitPrice().getAmount()))
                        .toList(),
                offer.leadTimeDays());
    }
}
