package org.fusewright.core.quote;

import org.fusewright.core.catalog.Catalog;

import java.util.List;

/** Everything that prices come from. */
public record PriceBook(
        Catalog catalog,
        List<LabourTask> labour,
        List<MarkUp> markUps,
        List<ShippingClass> shipping) {

    public PriceBook {
        labour = List.copyOf(labour);
        markUps = List.copyOf(markUps);
        shipping = List.copyOf(shipping);
    }
}
