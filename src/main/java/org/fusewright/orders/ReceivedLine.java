package org.fusewright.orders;

import java.math.BigDecimal;

/** So much of a part that stands on a delivery note; the part as it is written there. */
public record ReceivedLine(String part, BigDecimal quantity) {}
