package org.fusewright.papers;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a bench reads them, with the reader's decimal sign and units. */
final class Figures {

    private static final int USUAL_DIGITS = 4;
    private static final int MOST_DIGITS = 17;

    private final Wording wording;

    Figures(Wording wording) {
        this.wording = wording;
    }

    String of(double value) {
        return signed(digits(value, USUAL_DIGITS));
    }

    /** A value that is told apart from its limit, with as many digits as that takes. */
    String of(double value, double limit) {
        int digits = USUAL_DIGITS;
        while (value != limit
                && digits < MOST_DIGITS
                && digits(value, digits).equals(digits(limit, USUAL_DIGITS))) {
            digits++;
        }
        return signed(digits(value, digits));
    }

    /** A figure in the reader's units, where their sign stands elsewhere. */
    String of(double value, Unit unit) {
        return of(unit.shown(value, wording.units()));
    }

    /** A figure in the reader's units, with their sign. */
    String measure(double value, Unit unit) {
        return of(value, unit) + " " + sign(unit);
    }

    /** A whole figure, as fine in the reader's units, where their sign stands elsewhere. */
    String whole(double value, Unit unit) {
        UnitSystem units = wording.units();
        return wording.figure(unit.shown(value, units), unit.decimals(0, units));
    }

    /** The sign of a unit as the reader counts it. */
    String sign(Unit unit) {
        String sign = unit.sign(wording.units());
        return unit == Unit.CELSIUS ? "°" + sign : sign;
    }

    /** To two places, for a column of voltages. */
    String volts(double volts) {
        return plain(BigDecimal.valueOf(volts).setScale(2, RoundingMode.HALF_UP)) + " V";
    }

    String amperes(double amperes) {
        return of(amperes) + " A";
    }

    String metres(Millimetres length) {
        return metres(BigDecimal.valueOf(length.value(), 3));
    }

    /** The name of a size, which is in the standard that it was made to. */
    String size(WireSize size) {
        return signed(size.label().replace("mm2", "mm²"));
    }

    /** Pieces as a plain number, wire with its unit. */
    String quantity(PartLine line) {
        return line.part() instanceof Wire
                ? metres(line.quantity())
                : plain(withDecimals(line.quantity(), 0));
    }

    /** A number with all its decimals. */
    String plain(BigDecimal value) {
        return signed(value.toPlainString());
    }

    private String metres(BigDecimal metres) {
        BigDecimal shown =
                wording.units() == UnitSystem.METRIC
                        ? withDecimals(metres, 2)
                        : BigDecimal.valueOf(
                                        Unit.METRE.shown(metres.doubleValue(), wording.units()))
                                .setScale(2, RoundingMode.HALF_UP);
        return plain(shown) + " " + sign(Unit.METRE);
    }

    /** Without zeros at the end beyond so many decimals. */
    private static BigDecimal withDecimals(BigDecimal value, int least) {
        BigDecimal plain = value.stripTrailingZeros();
        return plain.setScale(Math.max(plain.scale(), least));
    }

    private String signed(String number) {
        return number.replace('.', wording.language().decimalSign());
    }

    private static String digits(double value, int digits) {
        BigDecimal exact = new BigDecimal(value);
        int whole = exact.precision() - exact.scale();
        BigDecimal rounded = exact.round(new MathContext(Math.max(digits, whole)));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
