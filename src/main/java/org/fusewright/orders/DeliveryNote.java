package org.fusewright.orders;

import java.util.List;

/** What a supplier's paper says that came; its number tells it from others. */
public record DeliveryNote(String number, List<ReceivedLine> lines) {
    public DeliveryNote {
        lines = List.copyOf(lines);
    }
}
