package org.fusewright.orders.web;

import org.fusewright.core.order.OrderState;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.fusewright.orders.StoredOrder;

import java.util.Map;

/**
 * What an order's page shows.
 *
 * @param typed what was typed of a delivery that could not be booked
 */
public record OrderView(StoredOrder kept, String notice, Map<String, String> typed) {

    public boolean isDraft() {
        return kept.state() == OrderState.DRAFT;
    }

    public boolean isOpen() {
        return kept.state().isOpen();
    }

    public String typedFor(OrderLine line) {
        return typed.getOrDefault("came-" + line.part(), "");
    }

    public String typedAs(String field) {
        return typed.getOrDefault(field, "");
    }

    public String metres(OrderLine line) {
        return line.unit().equals("m") ? " m" : "";
    }
}
