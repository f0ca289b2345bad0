package org.fusewright.orders.store;

import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;

/** One row of {@code purchase_order}, without its papers. */
public record OrderRow(
        long id,
        String number,
        String supplierCode,
        String supplierName,
        String currency,
        String state,
        @Nullable LocalDate wantedBy,
        @Nullable LocalDate orderedOn,
        long version,
        Instant changedAt) {

    /** One row of {@code purchase_order_line}. */
    public record Line(
            int line,
            String part,
            String title,
            String unit,
            int packSize,
            int quantity,
            BigDecimal unitPrice,
            BigDecimal price) {}

    /** One row of {@code delivery_line} with its delivery. */
    public record Received(
            long delivery, String note, Instant receivedAt, int line, BigDecimal quantity) {}

    /** An order in a list. */
    public record Summary(OrderRow order, int lines, BigDecimal total) {}
}
