package org.fusewright.jobs.web;

import org.fusewright.core.check.Check;
import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.util.List;
import java.util.Optional;

/** How the answer to "why this figure?" shows its formulas and values. */
public final class WhyView {

    private static final int DIGITS = 4;
    private static final int MOST_DECIMALS = 8;

    /** Plain numbers may be money. */
    private static final int CENTS = 2;

    private WhyView() {}

    /** One named value of a formula, and what comes out when it is a little larger. */
    public record Line(Quantity quantity, String value, String raised, String result) {}

    /** The values of a formula in the order in which it names them. */
    public static List<Line> lines(Derivation derivation) {
        List<Derivation.Change> changes = derivation.changes();
        return derivation.quantities().stream()
                .map(quantity -> line(quantity, changes, derivation.unit()))
                .toList();
    }

    private static Line line(Quantity quantity, List<Derivation.Change> changes, Unit resultUnit) {
        Optional<Derivation.Change> change =
                changes.stream().filter(one -> one.quantity().equals(quantity)).findFirst();
        return new Line(
                quantity,
                figure(quantity.value(), quantity.unit()),
                change.map(one -> figure(one.raised(), quantity.unit())).orElse(""),
                change.map(one -> figure(one.result(), resultUnit)).orElse(""));
    }

    /**
     * In the units that the formula counts in, and in the reader's where they differ: with those
     * alone one could not work it out.
     */
    public static String figure(double value, Unit unit) {
        String own = digits(value, unit == Unit.NONE ? CENTS : 0) + sign(unit, UnitSystem.METRIC);
        UnitSystem units = Words.wording().units();
        return unit.sign(units).equals(unit.sign(UnitSystem.METRIC))
                ? own
                : own + " (" + digits(unit.shown(value, units), 0) + sign(unit, units) + ")";
    }

    private static String sign(Unit unit, UnitSystem units) {
        String sign =
                switch (unit) {
                    case CELSIUS -> "°" + unit.sign(units);
                    case OHM -> "Ω";
                    case MILLIOHM -> "mΩ";
                    case MILLIOHM_PER_METRE -> "mΩ/m";
                    default -> unit.sign(units);
                };
        return sign.isEmpty() ? "" : "\u00a0" + sign;
    }

    private static String digits(double value, int leastDecimals) {
        if (value == 0) {
            return "0";
        }
        int magnitude = (int) Math.floor(Math.log10(Math.abs(value)));
        return Figures.plain(
                value, Math.clamp(DIGITS - 1 - magnitude, leastDecimals, MOST_DECIMALS));
    }

    /** A check's value or limit as the page shows it. */
    public static String shown(double value, Check check) {
        return Figures.short3(value, check.unit()) + " " + Figures.sign(check.unit());
    }

    /** The name of a check's figures. */
    public static String of(Check check) {
        return "check:" + check.code().code() + ":" + check.subject().text().english();
    }

    /** Where the answer is, beside the page of its job. */
    public static String address(long job, int revision, String figure) {
        return "/jobs/"
                + job
                + "/why?of="
                + Addresses.inQuery(figure)
                + (revision == 0 ? "" : "&revision=" + revision);
    }
}
