package org.fusewright.web;

import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.springframework.context.i18n.LocaleContextHolder;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Figures in the fields of forms: shown in the reader's units and with the reader's decimal sign,
 * read with a comma or a point, and with another unit where one is typed behind ("3 ft", "3' 6\"").
 *
 * <p>What is shown reads back as exactly the value that it was made from: a form that is sent
 * untouched changes nothing. So a value that is read in other units is rounded as finely as anybody
 * measures, and one is shown with as many decimals as it takes to come back.
 */
public final class Typed {
    private static final int MOST_DECIMALS = 15;

    private static final Pattern FIGURE =
            Pattern.compile("([+-]?\\d{1,15})(?:[.,](\\d{1,15}))?\\s*([^\\d\\s.,+-]{0,3})");
    private static final Pattern FEET_AND_INCHES =
            Pattern.compile(
                    "(\\d{1,5})\\s*(?:ft|'|′)\\s*(\\d{1,2}(?:[.,]\\d{1,3})?)\\s*(?:in|\"|″)?");

    /** What a unit may be typed as, in the unit of the document. */
    private record Sign(double factor, double offset) {
        Sign(double factor) {
            this(factor, 0);
        }
    }

    private static final Map<String, Sign> LENGTHS_M =
            Map.of(
                    "m", new Sign(1),
                    "cm", new Sign(0.01),
                    "mm", new Sign(0.001),
                    "ft", new Sign(0.3048),
                    "'", new Sign(0.3048),
                    "′", new Sign(0.3048),
                    "in", new Sign(0.0254),
                    "\"", new Sign(0.0254),
                    "″", new Sign(0.0254));
    private static final Map<String, Sign> TEMPERATURES_C =
            Map.of(
                    "c", new Sign(1),
                    "°c", new Sign(1),
                    "f", new Sign(1 / 1.8, -32 / 1.8),
                    "°f", new Sign(1 / 1.8, -32 / 1.8));
    private static final Map<String, Sign> MASSES_G =
            Map.of(
                    "g", new Sign(1),
                    "kg", new Sign(1000),
                    "oz", new Sign(28.349523125),
                    "lb", new Sign(453.59237));

    private Typed() {}

    /** A value of a document as a field shows it. */
    public static String shown(BigDecimal value, Unit unit) {
        UnitSystem units = Words.wording().units();
        if (unit.shown(1, units) == 1) {
            return Figures.plain(value);
        }
        double shown = unit.shown(value.doubleValue(), units);
        String text = "";
        for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
            BigDecimal rounded = BigDecimal.valueOf(shown).setScale(decimals, RoundingMode.HALF_UP);
            text = Figures.plain(rounded);
            if (read(text, unit).filter(back -> back.compareTo(value) == 0).isPresent()) {
                return text;
            }
        }
        return text;
    }

    /** What was typed, in the unit of the document; empty when it is no such figure. */
    public static Optional<BigDecimal> read(String typed, Unit unit) {
        String text = typed.strip().toLowerCase(Locale.ROOT);
        Matcher both = FEET_AND_INCHES.matcher(text);
        if (isLength(unit) && both.matches()) {
            double inches = Double.parseDouble(both.group(2).replace(',', '.'));
            double lengthM = Integer.parseInt(both.group(1)) * 0.3048 + inches * 0.0254;
            return Optional.of(rounded(unit == Unit.METRE ? lengthM : lengthM * 1000, unit, 0));
        }
        Matcher figure = FIGURE.matcher(text);
        if (!figure.matches()) {
            return Optional.empty();
        }
        String part = figure.group(2) == null ? "" : figure.group(2);
        BigDecimal number = new BigDecimal(figure.group(1) + (part.isEmpty() ? "" : "." + part));
        String sign = figure.group(3);
        UnitSystem units = Words.wording().units();
        if (sign.isEmpty() && units == UnitSystem.IMPERIAL && unit.shown(1, units) != 1) {
            return Optional.of(
                    rounded(unit.read(number.doubleValue(), units), unit, part.length()));
        }
        return sign.isEmpty() ? Optional.of(number) : converted(number, sign, unit, part.length());
    }

    private static Optional<BigDecimal> converted(
            BigDecimal number, String sign, Unit unit, int decimals) {
        Map<String, Sign> signs =
                switch (unit) {
                    case METRE, MILLIMETRE -> LENGTHS_M;
                    case CELSIUS -> TEMPERATURES_C;
                    case GRAM -> MASSES_G;
                    default -> Map.of();
                };
        if (sign.equals(unit.sign(UnitSystem.METRIC).toLowerCase(Locale.ROOT))) {
            return Optional.of(number);
        }
        return Optional.ofNullable(signs.get(sign))
                .map(known -> number.doubleValue() * known.factor() + known.offset())
                .map(value -> unit == Unit.MILLIMETRE ? value * 1000 : value)
                .map(value -> rounded(value, unit, decimals));
    }

    private static boolean isLength(Unit unit) {
        return unit == Unit.METRE || unit == Unit.MILLIMETRE;
    }

    /**
     * Runs to the millimetre, short leads to the whole one, temperatures to a tenth of a degree,
     * masses to a hundredth of a gram; finer when more decimals were typed.
     */
    private static BigDecimal rounded(double value, Unit unit, int typedDecimals) {
        int decimals =
                switch (unit) {
                    case METRE -> Math.max(3, typedDecimals);
                    case MILLIMETRE -> 0;
                    case GRAM -> Math.max(2, typedDecimals - 2);
                    default -> Math.max(1, typedDecimals);
                };
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    }

    /**
     * Takes the figures of a form in the units that it was shown in, whatever was picked since, and
     * answers in these.
     *
     * @param units as the form says; anything else leaves the reader's own
     */
    public static void in(String units) {
        if (LocaleContextHolder.getLocaleContext() instanceof Words.Reader reader) {
            UnitSystem.find(units)
                    .filter(shown -> shown != reader.wording().units())
                    .ifPresent(shown -> LocaleContextHolder.setLocaleContext(reader.with(shown)));
        }
    }
}
