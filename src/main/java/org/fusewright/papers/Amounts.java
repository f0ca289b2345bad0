package org.fusewright.papers;

import org.fusewright.core.quote.QuoteLine;
import org.joda.money.Money;

/** Amounts as papers print them: with the currency's own decimals, without its name. */
final class Amounts {
    private static final int MINUTES_IN_AN_HOUR = 60;

    private Amounts() {}

    static String of(Money amount) {
        return amount.getAmount().toPlainString();
    }

    /** The exact price of one unit, with the unit where it is not a piece. */
    static String unitPrice(QuoteLine line) {
        return line.unitPrice().getAmount().toPlainString() + perUnit(line);
    }

    private static String perUnit(QuoteLine line) {
        if (line.per() == MINUTES_IN_AN_HOUR) {
            return " / h";
        }
        return line.unit().equals("m") ? " / m" : "";
    }

    static String quantity(QuoteLine line) {
        String quantity = line.quantity().toPlainString();
        return switch (line.unit()) {
            case "m" -> quantity + " m";
            case "min" -> quantity + " min";
            default -> quantity;
        };
    }
}
