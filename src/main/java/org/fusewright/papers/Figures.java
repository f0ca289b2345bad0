package org.fusewright.papers;

import org.fusewright.core.kit.PartLine;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireSize;

import java.math.BigDecimal;
import java.math.MathContext;

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

    static String amperes(double amperes) {
        return of(amperes) + " A";
    }

    static String metres(Millimetres length) {
        return BigDecimal.valueOf(length.value(), 3).toPlainString() + " m";
    }

    static String size(WireSize size) {
        return size.label().replace("mm2", "mm²");
    }

    /** Pieces as a plain number, wire with its unit. */
    static String quantity(PartLine line) {
        BigDecimal quantity = line.quantity().stripTrailingZeros();
        String plain = quantity.setScale(Math.max(quantity.scale(), 0)).toPlainString();
        return line.unit().equals("each") ? plain : plain + " " + line.unit();
    }

    private static String of(double value, int digits) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
