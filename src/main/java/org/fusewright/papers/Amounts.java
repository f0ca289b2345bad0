package org.fusewright.papers;

import org.fusewright.core.quote.QuoteLine;
import org.joda.money.Money;

/**
 * Amounts as papers print them: with the currency's own decimals, without its name. What is sold by
 * the metre stays so, whatever the reader's units.
 */
final class Amounts {
    private static final int MINUTES_IN_AN_HOUR = 60;

    private final Figures figures;

    Amounts(Sheet sheet) {
        figures = sheet.figures();
    }

    /** For a table that a program reads: with a point. */
    static String forTable(Money amount) {
        return amount.getAmount().toPlainString();
    }

    String of(Money amount) {
        return figures.plain(amount.getAmount());
    }

    /** The exact price of one unit, with the unit where it is not a piece. */
    String unitPrice(QuoteLine line) {
        return figures.plain(line.unitPrice().getAmount()) + perUnit(line);
    }

    private static String perUnit(QuoteLine line) {
        if (line.per() == MINUTES_IN_AN_HOUR) {
            return " / h";
        }
        return line.unit().equals("m") ? " / m" : "";
    }

    String quantity(QuoteLine line) {
        String quantity = figures.plain(line.quantity());
        return switch (line.unit()) {
            case "m" -> quantity + " m";
            case "min" -> quantity + " min";
            default -> quantity;
        };
    }
}
