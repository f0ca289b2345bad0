package org.fusewright.catalogs;

import org.fusewright.core.catalog.Catalog;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Everything that one import brings: the parts and offers that kits are made of, and what the shop
 * needs beside them. The catalog's version covers all of it but the stock, which moves every day
 * and changes no kit. Lists stand in the order of code or part number.
 *
 * @param stock empty when the import says nothing of stock
 */
public record CatalogContent(
        Catalog catalog,
        List<Supplier> suppliers,
        List<LabourTask> labour,
        Optional<List<StockLevel>> stock) {

    public CatalogContent {
        suppliers = suppliers.stream().sorted(Comparator.comparing(Supplier::code)).toList();
        labour = labour.stream().sorted(Comparator.comparing(LabourTask::code)).toList();
        stock =
                stock.map(
                        levels ->
                                levels.stream()
                                        .sorted(Comparator.comparing(StockLevel::part))
                                        .toList());
    }
}
