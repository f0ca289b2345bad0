package org.fusewright.papers;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireSize;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a bench reads them. */
final class Figures {

    private static final int USUAL_DIGITS = 4;
    private static final int MOST_DIGITS = 17;

    private Figures() {}

    static String of(double value) {
        return of(value, USUAL_DIGITS);
    }

    /** A value that is told apart from its limit, with as many digits as that takes. */
    static String of(double value, double limit) {
        int digits = USUAL_DIGITS;
        while (value != limit
                && digits < MOST_DIGITS
                && of(value, digits).equals(of(limit, USUAL_DIGITS))) {
            digits++;
        }
        return of(value, digits);
    }

    /** To two places, for a column of voltages. */
    static String volts(double volts) {
        return BigDecimal.valueOf(volts).setScale(2, RoundingMode.HALF_UP) + " V";
    }

    static String amperes(double amperes) {
        return of(amperes) + " A";
    }

    static String metres(Millimetres length) {
        return metres(BigDecimal.valueOf(length.value(), 3));
    }

    static String size(WireSize size) {
        return size.label().replace("mm2", "mm²");
    }

    /** Pieces as a plain number, wire with its unit. */
    static String quantity(PartLine line) {
        return line.part() instanceof Wire
                ? metres(line.quantity())
                : withDecimals(line.quantity(), 0);
    }

    private static String metres(BigDecimal metres) {
        return withDecimals(metres, 2) + " m";
    }

    /** Without zeros at the end beyond so many decimals. */
    private static String withDecimals(BigDecimal value, int least) {
        BigDecimal plain = value.stripTrailingZeros();
        return plain.setScale(Math.max(plain.scale(), least)).toPlainString();
    }

    private static String of(double value, int digits) {
        BigDecimal exact = new BigDecimal(value);
        int whole = exact.precision() - exact.scale();
        BigDecimal rounded = exact.round(new MathContext(Math.max(digits, whole)));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
