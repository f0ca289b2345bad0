package org.fusewright.orders;

import org.fusewright.core.order.OrderState;
import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * An order with what became of it.
 *
 * @param received by line, what came of it; nothing for lines of which nothing came
 */
public record StoredOrder(
        long id,
        long version,
        OrderState state,
        PurchaseOrder order,
        Map<Integer, BigDecimal> received,
        List<Delivery> deliveries,
        Instant changedAt) {

    /** Goods that came, under the number of their delivery note. */
    public record Delivery(String note, Instant receivedAt, Map<Integer, BigDecimal> lines) {}

    public StoredOrder {
        received = Map.copyOf(received);
        deliveries = List.copyOf(deliveries);
    }

    public BigDecimal receivedOf(OrderLine line) {
        return received.getOrDefault(line.line(), BigDecimal.ZERO);
    }

    /** What may still come of a line. */
    public BigDecimal openOf(OrderLine line) {
        return state.isOpen()
                ? BigDecimal.valueOf(line.quantity()).subtract(receivedOf(line))
                : BigDecimal.ZERO;
    }
}
