package org.fusewright.core.quote;

import org.joda.money.BigMoney;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * One kind of bench work.
 *
 * @param minutes time for doing it once
 * @param hourlyRate what an hour of it costs
 */
public record LabourTask(String code, String title, BigDecimal minutes, BigMoney hourlyRate) {

    /** Amounts are kept with the decimals they need, so that equal amounts are equal records. */
    public LabourTask {
        BigDecimal strippedMinutes = minutes.stripTrailingZeros();
        minutes = strippedMinutes.setScale(Math.max(0, strippedMinutes.scale()));
        int decimals =
                Math.max(
                        hourlyRate.getCurrencyUnit().getDecimalPlaces(),
                        hourlyRate.getAmount().stripTrailingZeros().scale());
        hourlyRate = hourlyRate.withScale(decimals, RoundingMode.UNNECESSARY);
    }
}
