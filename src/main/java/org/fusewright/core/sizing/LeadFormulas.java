package org.fusewright.core.sizing;

import static org.fusewright.core.formula.Expression.fixed;
import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Expression;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

/** How a lead's figures came about, as formulas; worked out when asked for. */
public final class LeadFormulas {

    private LeadFormulas() {}

    /** {@link CutLength}. */
    public static Derivation cut(Lead lead, Choices choices) {
        Expression step =
                of(
                        Quantity.job(
                                "c",
                                choices.cutStep().value(),
                                Unit.MILLIMETRE,
                                Phrase.of("choices.cut-step")));
        Expression wanted =
                fixed(1000)
                        .times(route("L", lead.routeM(), lead.id()))
                        .times(
                                fixed(1).plus(
                                                of(Quantity.job(
                                                                "s",
                                                                choices.slackPercent(),
                                                                Unit.PERCENT,
                                                                Phrase.of("choices.slack")))
                                                        .over(fixed(100))))
                        .plus(
                                fixed(2).times(
                                                of(
                                                        Quantity.job(
                                                                "a",
                                                                choices.endAllowance().value(),
                                                                Unit.MILLIMETRE,
                                                                Phrase.of("choices.allowance")))))
                        .minus(fixed(CutLength.ARITHMETIC_REST_MM));
        return new Derivation(
                "X",
                Phrase.of("formula.cut", lead.id()),
                Unit.MILLIMETRE,
                Expression.largest(fixed(1), Expression.roundedUp(wanted.over(step))).times(step));
    }

    static Expression route(String name, double routeM, String lead) {
        return of(Quantity.job(name, routeM, Unit.METRE, Phrase.of("formula.route", lead)));
    }

    /** What a lead loses at its running current, its conductor as warm as that makes it. */
    public static Derivation drop(Lead lead, Surroundings surroundings) {
        Expression current =
                of(
                        Quantity.workedOut(
                                "I",
                                lead.currentA(),
                                Unit.AMPERE,
                                Phrase.of("formula.lead-runs", lead.id())));
        return new Derivation(
                "U",
                Phrase.of("formula.lead-loses", lead.id()),
                Unit.VOLT,
                current.times(
                                warmMilliohm(
                                        "",
                                        lead.wire(),
                                        route("L", lead.routeM(), lead.id()),
                                        current,
                                        surroundings))
                        .over(fixed(1000)));
    }

    /**
     * r L (234.5 + T)/254.5 with the temperature of {@link ConductorTemperature}.
     *
     * @param index ends the names of what is the wire's alone; empty where there is only one
     */
    static Expression warmMilliohm(
            String index,
            Wire wire,
            Expression route,
            Expression current,
            Surroundings surroundings) {
        return coldMilliohm(index, wire, route)
                .times(grown(temperature(index, wire, current, surroundings)));
    }

    static Expression coldMilliohm(String index, Wire wire, Expression route) {
        return of(Quantity.catalog(
                        "r" + index,
                        wire.milliohmPerM(),
                        Unit.MILLIOHM_PER_METRE,
                        Phrase.of("formula.resistance-per-metre", wire.number().value())))
                .times(route);
    }

    /** By how much copper's resistance has grown since 20 C: {@link Conductor}. */
    static Expression grown(Expression temperature) {
        return fixed(234.5).plus(temperature).over(fixed(254.5));
    }

    private static Expression temperature(
            String index, Wire wire, Expression current, Surroundings surroundings) {
        Expression ambient = ambient(surroundings);
        if (wire.classC() <= surroundings.ambient().value()) {
            return ambient;
        }
        double allowedA = allowed(wire, surroundings).result();
        Expression hottest = hottest(index, wire);
        return allowedA <= 0
                ? hottest
                : ambient.plus(
                        hottest.minus(ambient)
                                .times(
                                        Expression.root(
                                                current.over(
                                                        of(
                                                                Quantity.workedOut(
                                                                        "I_z" + plain(index),
                                                                        allowedA,
                                                                        Unit.AMPERE,
                                                                        Phrase.of(
                                                                                "formula.ampacity",
                                                                                wire.number()
                                                                                        .value())))))));
    }

    private static String plain(String index) {
        return index.replace("_", "");
    }

    private static Expression ambient(Surroundings surroundings) {
        return of(
                Quantity.job(
                        "T_a",
                        surroundings.ambient().value(),
                        Unit.CELSIUS,
                        Phrase.of("machine.ambient")));
    }

    private static Expression hottest(String index, Wire wire) {
        return of(
                Quantity.catalog(
                        "T_c" + plain(index),
                        wire.classC(),
                        Unit.CELSIUS,
                        Phrase.of("formula.class", wire.number().value())));
    }

    /** What a wire may carry where it lies: {@link LaidWire}. */
    public static Derivation allowed(Wire wire, Surroundings surroundings) {
        Celsius classTemperature = new Celsius(wire.classC());
        return new Derivation(
                "I_z",
                Phrase.of("formula.ampacity", wire.number().value()),
                Unit.AMPERE,
                Expression.smallest(
                        of(
                                Quantity.workedOut(
                                        "I_h",
                                        WireHeat.of(wire, surroundings).ampacityA(),
                                        Unit.AMPERE,
                                        Phrase.of("formula.heat-balance"))),
                        of(Quantity.rule(
                                        "h",
                                        LaidWire.ABOVE_TABLES,
                                        Unit.NONE,
                                        Phrase.of("formula.above-tables")))
                                .times(
                                        of(
                                                Quantity.rule(
                                                        "I_t",
                                                        Ampacity.conservativeA(
                                                                wire.copperMm2(), classTemperature),
                                                        Unit.AMPERE,
                                                        Phrase.of(
                                                                "formula.tabled",
                                                                wire.size().label()))))
                                .times(leftAt(wire, surroundings))
                                .times(
                                        of(
                                                Quantity.rule(
                                                        "k_b",
                                                        Ampacity.bundleFactor(
                                                                surroundings.bundledLeads()),
                                                        Unit.NONE,
                                                        Phrase.of(
                                                                "formula.bundle",
                                                                surroundings.bundledLeads()))))));
    }

    /** What a table leaves at a temperature: {@link Ampacity#temperatureFactor}. */
    private static Expression leftAt(Wire wire, Surroundings surroundings) {
        double ambientC = surroundings.ambient().value();
        if (ambientC <= Ampacity.TABLE_AMBIENT_C || ambientC >= wire.classC()) {
            return of(
                    Quantity.rule(
                            "k_T",
                            Ampacity.temperatureFactor(
                                    new Celsius(wire.classC()), surroundings.ambient()),
                            Unit.NONE,
                            Phrase.of("formula.left-at", Phrase.of("machine.ambient"))));
        }
        Expression hottest = hottest("", wire);
        return Expression.root(
                hottest.minus(ambient(surroundings))
                        .over(hottest.minus(fixed(Ampacity.TABLE_AMBIENT_C))));
    }
}
