package org.fusewright.web;

import org.joda.money.BigMoney;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** Figures as pages show them. */
public final class Figures {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private Figures() {}

    /** A number with at most so many decimals, none of them idle. */
    public static String plain(double value, int decimals) {
        return plain(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    public static String plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
    }

    /** A number to three significant digits. */
    public static String short3(double value) {
        if (value == 0) {
            return "0";
        }
        int magnitude = (int) Math.floor(Math.log10(Math.abs(value)));
        return plain(value, Math.clamp(2 - magnitude, 0, 6));
    }

    /** An amount with its currency: "1.68 EUR". */
    public static String money(Money money) {
        return money.getAmount().toPlainString() + " " + money.getCurrencyUnit().getCode();
    }

    /** An amount more or less: "+1.68 EUR", "−0.20 EUR", "0.00 EUR". */
    public static String signed(Money money) {
        String sign = money.isPositive() ? "+" : money.isNegative() ? "−" : "";
        return sign + money(money.abs());
    }

    /** A unit price with all its decimals, and at least those of the currency. */
    public static String price(BigMoney money) {
        BigDecimal amount = money.getAmount().stripTrailingZeros();
        int decimals = Math.max(amount.scale(), money.getCurrencyUnit().getDecimalPlaces());
        return amount.setScale(decimals, RoundingMode.UNNECESSARY).toPlainString();
    }

    /** Date and minute where the service runs. */
    public static String time(Instant instant) {
        return MINUTE.format(instant.atZone(ZoneId.systemDefault()));
    }
}
