package org.fusewright.jobs.load;

import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

/**
 * The numbers that a field allows.
 *
 * @param above whether {@code min} itself is left out
 * @param things what the numbers count: a text of the bundle that takes the number as {0}; empty
 *     where the unit says it
 */
public record Range(
        double min, boolean above, double max, Unit unit, String things, boolean whole) {
    private static final int DECIMALS = 2;

    public static Range above(double min, double max, Unit unit) {
        return new Range(min, true, max, unit, "", false);
    }

    public static Range from(double min, double max, Unit unit) {
        return new Range(min, false, max, unit, "", false);
    }

    public static Range whole(int min, int max, Unit unit) {
        return new Range(min, false, max, unit, "", true);
    }

    /** Such as {@link #above}, for things that have no unit of their own. */
    public static Range above(double min, double max, String things) {
        return new Range(min, true, max, Unit.NONE, things, false);
    }

    /** Such as {@link #from}, for things that have no unit of their own. */
    public static Range from(double min, double max, String things) {
        return new Range(min, false, max, Unit.NONE, things, false);
    }

    /** Such as {@link #whole}, for things that are counted. */
    public static Range whole(int min, int max, String things) {
        return new Range(min, false, max, Unit.NONE, things, true);
    }

    boolean allows(double value) {
        return (above ? value > min : value >= min)
                && value <= max
                && (!whole || value == Math.rint(value));
    }

    /** A number inside, to carry on with when none was given. */
    double placeholder() {
        return Math.min(Math.max(min, 1), max);
    }

    Text words() {
        return above
                ? Phrase.of("range.above", amount(min).bare(), ending())
                : Phrase.of(whole ? "range.whole" : "range.from", span());
    }

    /** Such as "1 to 3 leads". */
    Text span() {
        return Phrase.of("range.span", amount(min).bare(), ending());
    }

    private Text ending() {
        return things.isEmpty() ? amount(max) : Phrase.of(things, amount(max));
    }

    private Amount amount(double value) {
        return new Amount(value, unit, DECIMALS);
    }
}
