package org.fusewright.catalogs.load;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.math.BigDecimal;

/** The numbers that a cell may hold, both ends included; generous, to catch slips of the pen. */
enum Range {
    MASS_G("0", "100000"),
    LENGTH_MM("0.01", "1000"),
    LABEL_MM("10", "200"),
    AREA_MM2("0.01", "500"),
    CURRENT_A("0.1", "10000"),
    INTERRUPTING_A("1", "100000"),
    VOLTAGE_V("0.1", "1000"),
    COIL_OHM("0.1", "100000"),
    MILLIOHM("0", "100000"),
    MILLIOHM_PER_M("0.01", "1000"),
    CLASS_C("40", "400"),
    PERCENT_OF_RATING("1", "100000"),
    OPENING_S("0", "10000000"),
    TEMPERATURE_C("-100", "300"),
    RERATING_FACTOR("0.01", "10"),
    PRICE("0", "1000000"),
    AMOUNT("0", "1000000", 3),
    MINUTES("0", "10000", 3),
    MARK_UP_PERCENT("0", "10000", 3),
    TAX_PERCENT("0", "100", 3);

    private final BigDecimal lowest;
    private final BigDecimal highest;
    private final int decimals;

    Range(String lowest, String highest) {
        this(lowest, highest, 6);
    }

    Range(String lowest, String highest, int decimals) {
        this.lowest = new BigDecimal(lowest);
        this.highest = new BigDecimal(highest);
        this.decimals = decimals;
    }

    BigDecimal lowest() {
        return lowest;
    }

    boolean holds(BigDecimal number) {
        return lowest.compareTo(number) <= 0
                && number.compareTo(highest) <= 0
                && number.stripTrailingZeros().scale() <= decimals;
    }

    Text inWords() {
        return Phrase.of("catalog.range", lowest, highest, decimals);
    }
}
