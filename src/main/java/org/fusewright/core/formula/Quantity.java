package org.fusewright.core.formula;

import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

/**
 * A named value of a formula.
 *
 * @param name letters and digits, perhaps an underscore and an index: "I", "R_2"
 * @param value in {@code unit}
 * @param meaning what it is in this job
 */
public record Quantity(String name, double value, Unit unit, Text meaning, Origin origin) {

    private static final double WARMER_C = 10;
    private static final double MORE = 1.1;

    /** Where a value is from. */
    public enum Origin {
        /** A field of the job. */
        JOB("job"),
        /** A whole number of things in the job. */
        COUNT("count"),
        /** A figure of a part in the catalog. */
        CATALOG("catalog"),
        /** A constant or table of the rule. */
        RULE("rule"),
        /** Worked out before, and taken as it came out. */
        WORKED_OUT("worked-out");

        private final String code;

        Origin(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    public Quantity {
        if (!name.matches("[A-Za-z]+(_[A-Za-z0-9]+)?") || !Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " cannot be " + value);
        }
    }

    public static Quantity job(String name, double value, Unit unit, Text meaning) {
        return new Quantity(name, value, unit, meaning, Origin.JOB);
    }

    public static Quantity count(String name, int value, Text meaning) {
        return new Quantity(name, value, Unit.NONE, meaning, Origin.COUNT);
    }

    public static Quantity catalog(String name, double value, Unit unit, Text meaning) {
        return new Quantity(name, value, unit, meaning, Origin.CATALOG);
    }

    public static Quantity rule(String name, double value, Unit unit, Text meaning) {
        return new Quantity(name, value, unit, meaning, Origin.RULE);
    }

    public static Quantity workedOut(String name, double value, Unit unit, Text meaning) {
        return new Quantity(name, value, unit, meaning, Origin.WORKED_OUT);
    }

    /** A little more of it: 10 % more, 10 C warmer, one thing more. What a rule states stays. */
    double raised() {
        return switch (origin) {
            case RULE -> value;
            case COUNT -> value + 1;
            case JOB, CATALOG, WORKED_OUT -> unit == Unit.CELSIUS ? value + WARMER_C : value * MORE;
        };
    }
}
