package org.fusewright.core.quote;

import java.math.BigDecimal;

/** Percents without idle zeros, so that equal ones are equal. */
final class Percent {
    static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private Percent() {}

    static BigDecimal plain(BigDecimal percent) {
        BigDecimal stripped = percent.stripTrailingZeros();
        return stripped.setScale(Math.max(0, stripped.scale()));
    }
}
