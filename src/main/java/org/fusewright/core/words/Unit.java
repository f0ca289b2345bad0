package org.fusewright.core.words;

import java.util.Optional;

/** The unit of a figure, as metric and imperial readers see it. */
public enum Unit {
    NONE(""),
    AMPERE("A"),
    VOLT("V"),
    WATT("W"),
    OHM("ohm"),
    MILLIOHM("mohm"),
    MILLIOHM_PER_METRE("mohm/m"),
    PERCENT("%"),
    SQUARE_MILLIMETRE("mm2"),
    SECOND("s"),
    AMPERE_SQUARE_SECOND("A2s"),
    METRE("m", "ft", 1 / 0.3048, 0, 0),
    MILLIMETRE("mm", "in", 1 / 25.4, 0, 2),
    CELSIUS("C", "F", 1.8, 32, 0),
    KELVIN("K", "F", 1.8, 0, 0),
    GRAM("g", "oz", 1 / 28.349523125, 0, 1),
    NEWTON("N", "lbf", 1 / 4.4482216152605, 0, 0);

    private final String sign;
    private final String imperialSign;
    private final Literal behind;
    private final Literal imperialBehind;
    private final double factor;
    private final double offset;
    private final int moreDecimals;

    Unit(String sign) {
        this(sign, sign, 1, 0, 0);
    }

    /** International yard and pound (1959), exact. */
    Unit(String sign, String imperialSign, double factor, double offset, int moreDecimals) {
        this.sign = sign;
        this.imperialSign = imperialSign;
        this.behind = behind(sign);
        this.imperialBehind = behind(imperialSign);
        this.factor = factor;
        this.offset = offset;
        this.moreDecimals = moreDecimals;
    }

    /** The unit of a sign, as documents write it. */
    public static Optional<Unit> find(String sign) {
        for (Unit unit : values()) {
            if (unit.sign.equals(sign)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    public String sign(UnitSystem units) {
        return units == UnitSystem.METRIC ? sign : imperialSign;
    }

    /** The sign as it stands behind a figure, with a space between them. */
    Literal behind(UnitSystem units) {
        return units == UnitSystem.METRIC ? behind : imperialBehind;
    }

    private static Literal behind(String sign) {
        return new Literal(sign.isEmpty() ? "" : " " + sign);
    }

    /** A value of this unit as the reader counts it. */
    public double shown(double value, UnitSystem units) {
        return units == UnitSystem.METRIC ? value : value * factor + offset;
    }

    /** What a reader typed, in this unit. */
    public double read(double typed, UnitSystem units) {
        return units == UnitSystem.METRIC ? typed : (typed - offset) / factor;
    }

    /** Decimals that a figure needs in the reader's unit to be as fine as in this one. */
    public int decimals(int decimals, UnitSystem units) {
        return units == UnitSystem.METRIC ? decimals : decimals + moreDecimals;
    }
}
