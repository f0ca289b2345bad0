package org.fusewright.catalogs;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quote.LabourTask;
import org.fusewright.core.quote.MarkUp;
import org.fusewright.core.quote.ShippingClass;
import org.fusewright.core.quote.TaxKind;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Everything that one import brings: the parts and offers that kits are made of, and what the shop
 * needs beside them. The catalog's version covers what kits are planned from and the labour; stock,
 * mark-ups, shipping and taxes change no kit. Lists stand in the order of code or part number.
 *
 * @param stock empty when the import says nothing of stock; likewise the three after it
 */
public record CatalogContent(
        Catalog catalog,
        List<Supplier> suppliers,
        List<LabourTask> labour,
        Optional<List<StockLevel>> stock,
        Optional<List<MarkUp>> markUps,
        Optional<List<ShippingClass>> shipping,
        Optional<List<TaxKind>> taxes) {

    private static final Comparator<MarkUp> PARTS_GROUPS_REST =
            Comparator.comparing((MarkUp row) -> row.part().isEmpty())
                    .thenComparing(row -> row.group().isEmpty())
                    .thenComparing(row -> row.part().map(PartNumber::value).orElse(""))
                    .thenComparing(row -> row.group().orElse(""));
    private static final Comparator<ShippingClass> BY_CURRENCY_AND_WEIGHT =
            Comparator.comparing((ShippingClass row) -> row.price().getCurrencyUnit().getCode())
                    .thenComparing(ShippingClass::upToG);

    public CatalogContent {
        suppliers = suppliers.stream().sorted(Comparator.comparing(Supplier::code)).toList();
        labour = labour.stream().sorted(Comparator.comparing(LabourTask::code)).toList();
        stock = stock.map(rows -> sorted(rows, Comparator.comparing(StockLevel::part)));
        markUps = markUps.map(rows -> sorted(rows, PARTS_GROUPS_REST));
        shipping = shipping.map(rows -> sorted(rows, BY_CURRENCY_AND_WEIGHT));
        taxes = taxes.map(rows -> sorted(rows, Comparator.comparing(TaxKind::code)));
    }

    private static <T> List<T> sorted(List<T> rows, Comparator<T> order) {
        return rows.stream().sorted(order).toList();
    }
}
