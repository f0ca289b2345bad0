package org.fusewright.core.sizing;

import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Expression;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** How currents and what a device may carry came about, as formulas; worked out when asked for. */
public final class CurrentFormulas {

    private CurrentFormulas() {}

    /** {@link RunningCurrent} of each load, summed. */
    public static Derivation running(Circuit circuit, Supply supply) {
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < circuit.loads().size(); i++) {
            Load load = circuit.loads().get(i);
            terms.add(times(load, i + 1, worst(load, i + 1, supply)));
        }
        return current(Phrase.of("formula.runs", circuit.id()), Expression.sum(terms));
    }

    /** {@link RunningCurrent} of the one load that a lead comes from or goes to. */
    public static Derivation single(Circuit circuit, LeadEnd at, Supply supply) {
        Load load =
                SingleLoad.listOf(circuit, supply).stream()
                        .filter(one -> LoadLeads.atLoad(one).equals(at))
                        .map(SingleLoad::load)
                        .findFirst()
                        .orElseThrow();
        return current(Phrase.of("formula.load-runs", load.title()), worst(load, 1, supply));
    }

    private static Expression worst(Load load, int index, Supply supply) {
        Expression off = at(load, index, engineOff(supply));
        Expression charging = at(load, index, charging(supply));
        return load.kind().exponent() == 0 ? off : Expression.largest(off, charging);
    }

    private static Derivation current(Phrase meaning, Expression expression) {
        return new Derivation("I", meaning, Unit.AMPERE, expression);
    }

    static Expression engineOff(Supply supply) {
        return of(
                Quantity.job(
                        "U_off", supply.engineOffV(), Unit.VOLT, Phrase.of("machine.engine-off")));
    }

    static Expression charging(Supply supply) {
        return of(
                Quantity.job("U_ch", supply.chargingV(), Unit.VOLT, Phrase.of("machine.charging")));
    }

    /** I0 (U/U0)^n of one such load. */
    private static Expression at(Load load, int index, Expression supply) {
        Expression rated =
                of(
                        Quantity.job(
                                "I_" + index,
                                load.ratedA(),
                                Unit.AMPERE,
                                Phrase.of(
                                        "formula.load-draws",
                                        load.title(),
                                        Amount.volts(load.ratedV()))));
        double exponent = load.kind().exponent();
        if (exponent == 0) {
            return rated;
        }
        Expression ratio =
                supply.over(
                        of(
                                Quantity.job(
                                        "U_" + index,
                                        load.ratedV(),
                                        Unit.VOLT,
                                        Phrase.of("formula.load-stated-at", load.title()))));
        return rated.times(
                exponent == 1
                        ? ratio
                        : ratio.toThe(
                                of(
                                        Quantity.rule(
                                                "x_" + index,
                                                exponent,
                                                Unit.NONE,
                                                Phrase.of("formula.exponent", load.title())))));
    }

    private static Expression times(Load load, int index, Expression one) {
        return load.count() == 1
                ? one
                : of(Quantity.count(
                                "n_" + index,
                                load.count(),
                                Phrase.of("formula.so-many", load.title())))
                        .times(one);
    }

    /** The highest step of {@link StartUp}, or the running current when nothing draws more. */
    public static Derivation start(Circuit circuit, Supply supply) {
        double worstMs = Double.POSITIVE_INFINITY;
        double worstA = 0;
        for (StartUp.Step step : StartUp.of(SingleLoad.listOf(circuit, supply)).steps()) {
            if (step.currentA() > worstA) {
                worstA = step.currentA();
                worstMs = step.durationS() * 1000;
            }
        }
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < circuit.loads().size(); i++) {
            Load load = circuit.loads().get(i);
            Expression runs =
                    of(
                            Quantity.workedOut(
                                    "I_" + (i + 1),
                                    RunningCurrent.worstA(load, supply),
                                    Unit.AMPERE,
                                    Phrase.of("formula.load-runs", load.title())));
            boolean starts = load.inrush().ms() >= worstMs * (1 - 1e-12);
            terms.add(
                    times(
                            load,
                            i + 1,
                            starts
                                    ? of(Quantity.job(
                                                    "m_" + (i + 1),
                                                    load.inrush().multiple(),
                                                    Unit.NONE,
                                                    Phrase.of("formula.starts-at", load.title())))
                                            .times(runs)
                                    : runs));
        }
        return new Derivation(
                "I", Phrase.of("formula.starts", circuit.id()), Unit.AMPERE, Expression.sum(terms));
    }

    /**
     * What a device carries: all circuits behind it.
     *
     * @param circuits its owner first
     */
    public static Derivation carried(List<SizedCircuit> circuits) {
        String owner = circuits.getFirst().id();
        return current(
                Phrase.of("formula.carries", owner),
                Expression.sum(
                        numbered(
                                circuits,
                                SizedCircuit::runningA,
                                SizedCircuit::id,
                                "formula.runs")));
    }

    private static <T> List<Expression> numbered(
            List<T> parts, ToDoubleFunction<T> currentA, Function<T, String> id, String meaning) {
        List<Expression> terms = new ArrayList<>();
        for (T part : parts) {
            terms.add(
                    of(
                            Quantity.workedOut(
                                    "I_" + (terms.size() + 1),
                                    currentA.applyAsDouble(part),
                                    Unit.AMPERE,
                                    Phrase.of(meaning, id.apply(part)))));
        }
        return terms;
    }

    /** What a device may carry for good: {@link DeviceRules}. */
    public static Derivation mayCarry(Device device, boolean momentary, Celsius surrounding) {
        return new Derivation(
                "I_max",
                Phrase.of("formula.may-carry"),
                Unit.AMPERE,
                of(Quantity.rule(
                                "s",
                                momentary ? 1 : DeviceLimits.CONTINUOUS_SHARE,
                                Unit.NONE,
                                Phrase.of(
                                        momentary
                                                ? "formula.share-momentary"
                                                : "formula.share-continuous")))
                        .times(
                                of(
                                        Quantity.catalog(
                                                "I_n",
                                                device.ratingA(),
                                                Unit.AMPERE,
                                                Phrase.of(
                                                        "formula.rating",
                                                        device.number().value()))))
                        .times(
                                of(
                                        Quantity.catalog(
                                                "k",
                                                device.rerating().factorAt(surrounding),
                                                Unit.NONE,
                                                Phrase.of(
                                                        "formula.rerating",
                                                        device.number().value(),
                                                        Amount.celsius(surrounding.value()))))));
    }

    /**
     * What a feed carries: {@link Diversity} of all devices and relay coils on it.
     *
     * @param owners circuits on it with a device of their own
     * @param triggered circuits whose relay it switches
     */
    public static Derivation feed(
            Feed feed, List<SizedCircuit> owners, List<ResolvedCircuit> triggered, Supply supply) {
        List<Expression> terms =
                numbered(owners, SizedCircuit::carriedA, SizedCircuit::id, "formula.carries");
        for (int i = 0; i < triggered.size(); i++) {
            terms.add(coil(triggered.get(i), i + 1, supply));
        }
        Expression connected = Expression.sum(terms);
        return current(
                Phrase.of("formula.feed-runs", feed.id()),
                feed.diversity() == 1
                        ? connected
                        : Expression.largest(
                                concat(
                                        of(Quantity.job(
                                                        "g",
                                                        feed.diversity(),
                                                        Unit.NONE,
                                                        Phrase.of("sheet.diversity")))
                                                .times(connected),
                                        terms)));
    }

    private static Expression[] concat(Expression first, List<Expression> others) {
        List<Expression> all = new ArrayList<>(List.of(first));
        all.addAll(others);
        return all.toArray(Expression[]::new);
    }

    /** What a relay's coil draws, charging. */
    public static Derivation coil(ResolvedCircuit circuit, Supply supply) {
        return current(Phrase.of("formula.coil-runs", circuit.id()), coil(circuit, 1, supply));
    }

    /**
     * What a lead carries that ends at a splice: all that goes on from there.
     *
     * @param mostA what the feed runs altogether, where that may be less than its parts
     */
    public static Derivation passedOn(Lead lead, List<Lead> onward, OptionalDouble mostA) {
        Expression sum =
                Expression.sum(numbered(onward, Lead::currentA, Lead::id, "formula.lead-runs"));
        return current(
                Phrase.of("formula.lead-runs", lead.id()),
                mostA.isEmpty()
                        ? sum
                        : Expression.smallest(
                                sum,
                                of(
                                        Quantity.workedOut(
                                                "I_f",
                                                mostA.getAsDouble(),
                                                Unit.AMPERE,
                                                Phrase.of("formula.feed-all")))));
    }

    private static Expression coil(ResolvedCircuit circuit, int index, Supply supply) {
        return charging(supply)
                .over(
                        of(
                                Quantity.catalog(
                                        "R_" + index,
                                        circuit.relay().orElseThrow().coilOhm(),
                                        Unit.OHM,
                                        Phrase.of("formula.coil", circuit.id()))));
    }

    /** {@link ChargingBalance#continuousA}. */
    public static Derivation continuous(List<ResolvedCircuit> circuits, Supply supply) {
        List<Expression> terms = new ArrayList<>();
        int index = 0;
        for (ResolvedCircuit circuit : circuits) {
            for (Load load : circuit.circuit().loads()) {
                index++;
                if (load.duty() == Duty.CONTINUOUS) {
                    terms.add(times(load, index, at(load, index, charging(supply))));
                }
            }
        }
        for (ResolvedCircuit circuit : circuits) {
            if (circuit.relay().isPresent()) {
                index++;
                terms.add(coil(circuit, index, supply));
            }
        }
        return current(Phrase.of("formula.continuous"), Expression.sum(terms));
    }

    /** What of its output the charging system should be asked for at most. */
    public static Derivation outputShare(double outputA) {
        return new Derivation(
                "I_max",
                Phrase.of("formula.output-share"),
                Unit.AMPERE,
                of(Quantity.rule(
                                "s",
                                ChargingBalance.SHARE_OF_OUTPUT,
                                Unit.NONE,
                                Phrase.of("formula.share-of-output")))
                        .times(
                                of(
                                        Quantity.job(
                                                "I_out",
                                                outputA,
                                                Unit.AMPERE,
                                                Phrase.of("machine.output-at-speed")))));
    }

    /** The contact rating that {@link RelayRules} ask for. */
    public static Derivation contact(Circuit circuit, Supply supply) {
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < circuit.loads().size(); i++) {
            Load load = circuit.loads().get(i);
            terms.add(
                    times(
                            load,
                            i + 1,
                            of(Quantity.rule(
                                            "f_" + (i + 1),
                                            RelayRules.contactFactor(
                                                    load.kind(), supply.nominalV()),
                                            Unit.NONE,
                                            Phrase.of("formula.contact-factor", load.title())))
                                    .times(
                                            of(
                                                    Quantity.workedOut(
                                                            "I_" + (i + 1),
                                                            RunningCurrent.worstA(load, supply),
                                                            Unit.AMPERE,
                                                            Phrase.of(
                                                                    "formula.load-runs",
                                                                    load.title()))))));
        }
        return current(Phrase.of("formula.contact-asks", circuit.id()), Expression.sum(terms));
    }

    /** What a coil needs to pull in as hot as the block: {@link RelayRules}. */
    public static Derivation pullIn(ResolvedCircuit circuit, Celsius block) {
        return new Derivation(
                "U",
                Phrase.of("formula.pull-in-hot", circuit.id()),
                Unit.VOLT,
                of(Quantity.catalog(
                                "U_p",
                                circuit.relay().orElseThrow().pullInV(),
                                Unit.VOLT,
                                Phrase.of("formula.pull-in", circuit.id())))
                        .times(
                                LeadFormulas.grown(
                                        of(
                                                Quantity.job(
                                                        "T",
                                                        block.value(),
                                                        Unit.CELSIUS,
                                                        Phrase.of("machine.under-cap"))))));
    }
}
