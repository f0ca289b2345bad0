package org.fusewright.web;

import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.joda.money.BigMoney;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;

/** Figures as pages show them, with the reader's decimal sign, units and order of a date. */
public final class Figures {
    /** English is read on both sides of an ocean: the one order of a date that all take alike. */
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private static final int DIGITS_A_GROUP = 3;

    private Figures() {}

    /** A number with at most so many decimals, none of them idle. */
    public static String plain(double value, int decimals) {
        return plain(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    public static String plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return signed((stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString());
    }

    /** A number as it was given, idle decimals and all. */
    public static String exact(BigDecimal value) {
        return signed(value.toPlainString());
    }

    private static String signed(String number) {
        char sign = Words.wording().language().decimalSign();
        return sign == '.' ? number : number.replace('.', sign);
    }

    /** A number to three significant digits. */
    public static String short3(double value) {
        if (value == 0) {
            return "0";
        }
        int magnitude = (int) Math.floor(Math.log10(Math.abs(value)));
        return plain(value, Math.clamp(2 - magnitude, 0, 6));
    }

    /**
     * As above, of a figure in a unit of documents, in the reader's units.
     *
     * @param sign of the unit, as documents write it
     */
    public static String short3(double value, String sign) {
        return short3(unit(sign).shown(value, Words.wording().units()));
    }

    /** How the reader writes a unit of documents. */
    public static String sign(String sign) {
        Unit unit = unit(sign);
        return unit == Unit.NONE ? sign : unit.sign(Words.wording().units());
    }

    private static Unit unit(String sign) {
        for (Unit unit : Unit.values()) {
            if (unit.sign(UnitSystem.METRIC).equals(sign)) {
                return unit;
            }
        }
        return Unit.NONE;
    }

    /** An amount with its currency: "1.68 EUR". */
    public static String money(Money money) {
        return amount(money) + " " + money.getCurrencyUnit().getCode();
    }

    /** An amount where the currency stands elsewhere. */
    public static String amount(Money money) {
        return grouped(money.getAmount().toPlainString());
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
        return grouped(amount.setScale(decimals, RoundingMode.UNNECESSARY).toPlainString());
    }

    /** English stays as documents write it: a comma could be taken for a decimal one. */
    private static String grouped(String number) {
        Language language = Words.wording().language();
        if (language == Language.ENGLISH) {
            return number;
        }
        StringBuilder grouped = new StringBuilder(signed(number));
        char between = DecimalFormatSymbols.getInstance(language.locale()).getGroupingSeparator();
        int point = grouped.indexOf(String.valueOf(language.decimalSign()));
        int first = number.startsWith("-") ? 1 : 0;
        for (int at = (point < 0 ? grouped.length() : point) - DIGITS_A_GROUP;
                at > first;
                at -= DIGITS_A_GROUP) {
            grouped.insert(at, between);
        }
        return grouped.toString();
    }

    /** A figure in the reader's units, with its sign. */
    public static String measure(double value, Unit unit, int decimals) {
        return Words.say(new Amount(value, unit, decimals));
    }

    /** A figure in the reader's units where their sign stands elsewhere. */
    public static String bare(double value, Unit unit, int decimals) {
        var units = Words.wording().units();
        return plain(unit.shown(value, units), unit.decimals(decimals, units));
    }

    /** The sign of a unit as the reader counts it, for a heading or label. */
    public static String sign(Unit unit) {
        String sign = unit.sign(Words.wording().units());
        return unit == Unit.CELSIUS ? "°" + sign : sign;
    }

    /** Date and minute where the service runs. */
    public static String time(Instant instant) {
        Language language = Words.wording().language();
        return (language == Language.ENGLISH
                        ? MINUTE
                        : DateTimeFormatter.ofLocalizedDateTime(
                                        FormatStyle.MEDIUM, FormatStyle.SHORT)
                                .withLocale(language.locale()))
                .format(instant.atZone(ZoneId.systemDefault()));
    }

    public static String day(LocalDate day) {
        Language language = Words.wording().language();
        return language == Language.ENGLISH
                ? day.toString()
                : DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                        .withLocale(language.locale())
                        .format(day);
    }
}
