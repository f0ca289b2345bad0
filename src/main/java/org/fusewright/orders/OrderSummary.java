package org.fusewright.orders;

import org.fusewright.core.order.OrderState;
import org.joda.money.Money;

import java.time.LocalDate;
import java.util.Optional;

/** An order in a list. */
public record OrderSummary(
        long id,
        String number,
        OrderState state,
        String supplierName,
        Optional<LocalDate> orderedOn,
        Optional<LocalDate> wantedBy,
        int lines,
        Money total) {}
