package org.fusewright.core.sizing;

import static org.fusewright.core.formula.Expression.fixed;
import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Expression;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.job.Job;
import org.fusewright.core.sizing.CurrentWay.Piece;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How the figures along a current's way came about, as formulas: what a load loses, what a dead
 * short draws, what the battery keeps. Worked out when asked for.
 */
public final class WayFormulas {

    private final Job job;
    private final List<CircuitPlan> plans;
    private final FeedPlan feed;

    /**
     * @param plans of all circuits behind one device, its owner's first
     * @param feed that the device hangs on
     */
    WayFormulas(Job job, List<CircuitPlan> plans, FeedPlan feed) {
        this.job = job;
        this.plans = plans;
        this.feed = feed;
    }

    /**
     * {@link VoltageDrop} of one load, in percent of the nominal voltage.
     *
     * @param load index among the circuit's loads, each counted alone
     */
    public Derivation dropPercent(String circuit, int load) {
        CircuitPlan plan = planOf(circuit);
        List<Piece> way = CurrentWay.toLoad(feed, plans, plan, load);
        Map<Double, List<Expression>> byCurrent = new LinkedHashMap<>();
        Map<Double, Expression> currents = new LinkedHashMap<>();
        Expression run =
                LeadFormulas.route(
                        "L",
                        way.stream()
                                .filter(piece -> piece.isTrunkOf(circuit))
                                .findFirst()
                                .orElseThrow()
                                .routeM(),
                        circuit + "/out");
        int number = 0;
        for (Piece piece : way) {
            Expression current =
                    currents.computeIfAbsent(
                            piece.currentA(),
                            currentA ->
                                    of(
                                            Quantity.workedOut(
                                                    "I_" + (currents.size() + 1),
                                                    currentA,
                                                    Unit.AMPERE,
                                                    Phrase.of(
                                                            "formula.runs-through",
                                                            piece.name()))));
            number++;
            byCurrent
                    .computeIfAbsent(piece.currentA(), c -> new ArrayList<>())
                    .add(
                            piece.isTrunkOf(circuit)
                                    ? LeadFormulas.warmMilliohm(
                                            "_" + number,
                                            piece.laid().orElseThrow().wire(),
                                            run,
                                            current,
                                            job.surroundings())
                                    : resistance(number, piece, piece.warmOhm()));
        }
        List<Expression> lost = new ArrayList<>();
        byCurrent.forEach(
                (currentA, resistances) ->
                        lost.add(currents.get(currentA).times(Expression.sum(resistances))));
        String title = plan.loads().get(load).title();
        return new Derivation(
                "u",
                Phrase.of("formula.load-loses", title),
                Unit.PERCENT,
                fixed(100)
                        .times(Expression.sum(lost))
                        .over(
                                fixed(1000)
                                        .times(
                                                of(
                                                        Quantity.job(
                                                                "U_n",
                                                                job.supply().nominalV(),
                                                                Unit.VOLT,
                                                                Phrase.of("job.voltage"))))));
    }

    private CircuitPlan planOf(String circuit) {
        return plans.stream().filter(plan -> plan.id().equals(circuit)).findFirst().orElseThrow();
    }

    private static Expression resistance(int number, Piece piece, double ohm) {
        String name = "R_" + number;
        double milliohm = ohm * 1000;
        return of(
                piece.laid().isPresent()
                        ? Quantity.workedOut(name, milliohm, Unit.MILLIOHM, piece.name())
                        : Quantity.catalog(name, milliohm, Unit.MILLIOHM, piece.name()));
    }

    private Expression battery() {
        return of(
                Quantity.job(
                        "R_b",
                        job.supply().batteryResistanceMilliohm(),
                        Unit.MILLIOHM,
                        Phrase.of("machine.battery-resistance")));
    }

    /** The most that a dead short right behind the device draws: {@link FaultCurrent}. */
    public Derivation highestShort() {
        return highest(CurrentWay.toDevice(feed, plans.getFirst()));
    }

    /** The same at the feed's main device. */
    public Derivation highestShortAtMain() {
        return highest(CurrentWay.toMain(feed));
    }

    private Derivation highest(List<Piece> way) {
        List<Expression> resistances = new ArrayList<>(List.of(battery()));
        for (Piece piece : way) {
            if (!piece.isDevice()) {
                int number = resistances.size();
                resistances.add(
                        piece.laid()
                                .map(
                                        laid ->
                                                LeadFormulas.coldMilliohm(
                                                        "_" + number,
                                                        laid.wire(),
                                                        LeadFormulas.route(
                                                                "L_" + number,
                                                                piece.routeM(),
                                                                piece.id())))
                                .orElseGet(() -> resistance(number, piece, piece.warmOhm())));
            }
        }
        return shorted(
                Phrase.of("formula.highest-short"),
                CurrentFormulas.charging(job.supply()),
                resistances);
    }

    private static Derivation shorted(
            Phrase meaning, Expression voltage, List<Expression> milliohms) {
        return new Derivation(
                "I",
                meaning,
                Unit.AMPERE,
                fixed(1000).times(voltage).over(Expression.sum(milliohms)));
    }

    /** The least that a dead short at a circuit's farthest load draws. */
    public Derivation lowestShort(String circuit) {
        CircuitPlan plan = planOf(circuit);
        List<Piece> farthest = List.of();
        for (int load = 0; load < plan.loads().size(); load++) {
            List<Piece> way = CurrentWay.toLoad(feed, plans, plan, load);
            if (ohm(way) > ohm(farthest)) {
                farthest = way;
            }
        }
        List<Expression> resistances = new ArrayList<>(List.of(battery()));
        for (Piece piece : farthest) {
            resistances.add(resistance(resistances.size(), piece, piece.warmOhm()));
        }
        return shorted(
                Phrase.of("formula.lowest-short", circuit),
                CurrentFormulas.engineOff(job.supply()),
                resistances);
    }

    /** The least that a dead short at the farthest load of any circuit behind the device draws. */
    public Derivation lowestShort() {
        CircuitPlan farthest = plans.getFirst();
        for (CircuitPlan plan : plans) {
            farthest = plan.farOhm() > farthest.farOhm() ? plan : farthest;
        }
        return lowestShort(farthest.id());
    }

    private static double ohm(List<Piece> way) {
        return way.stream().mapToDouble(Piece::warmOhm).sum();
    }
}
