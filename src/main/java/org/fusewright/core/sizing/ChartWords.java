package org.fusewright.core.sizing;

import org.fusewright.core.sizing.TimeCurrentChart.Demand;
import org.fusewright.core.sizing.TimeCurrentChart.Endurance;
import org.fusewright.core.sizing.TimeCurrentChart.Guard;
import org.fusewright.core.sizing.TimeCurrentChart.Point;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;

/** A time-current chart in sentences, with the figures that decide. */
final class ChartWords {

    /** Just beside a jump. */
    private static final double BESIDE = 1e-9;

    private final Guard guard;
    private final TimeCurrentBand band;
    private final Demand demand;
    private final Endurance weakest;
    private final ShortCircuitWithstand.Span shorts;

    ChartWords(Guard guard, Demand demand, Endurance weakest, ShortCircuitWithstand.Span shorts) {
        this.guard = guard;
        this.band = guard.band();
        this.demand = demand;
        this.weakest = weakest;
        this.shorts = shorts;
    }

    /**
     * @param latest the device's curve over the whole axis of currents
     * @param damage the wire's
     */
    Text describe(List<Point> latest, List<Point> damage) {
        return Text.sentences(
                List.of(opening(latest), running(), start(), wire(latest, damage), deadShort()));
    }

    private Text opening(List<Point> latest) {
        Text named = DeviceWords.inFull(guard.device());
        for (Point point : latest) {
            if (point.seconds() < Curve.NEVER_S) {
                double earliestS = band.earliestS(point.currentA());
                Text withinS = time(point.seconds());
                Amount atA = Amount.amps(point.currentA());
                return earliestS > 0 && Double.isFinite(earliestS)
                        ? Phrase.of("chart.opens.between", named, time(earliestS), withinS, atA)
                        : Phrase.of("chart.opens.within", named, withinS, atA);
            }
        }
        return Phrase.of("chart.opens.never", named);
    }

    private Text start() {
        StartUp.@Nullable Step worst = null;
        for (StartUp.Step step : demand.startUp().steps()) {
            if (worst == null || spare(step) < spare(worst)) {
                worst = step;
            }
        }
        return worst == null ? Phrase.of("chart.start.none") : start(worst);
    }

    private Text running() {
        double opensS = band.earliestS(demand.carriedA());
        Amount runningA = Amount.amps(demand.carriedA());
        return Double.isInfinite(opensS)
                ? Phrase.of("chart.running.held", runningA)
                : Phrase.of("chart.running.opens", runningA, time(opensS));
    }

    private Text start(StartUp.Step step) {
        double opensS = band.earliestS(step.currentA());
        Amount startA = Amount.amps(step.currentA());
        Text durationS = time(step.durationS());
        return Double.isInfinite(opensS)
                ? Phrase.of("chart.start.held", startA, durationS)
                : Phrase.of(
                        opensS >= step.durationS() ? "chart.start.below" : "chart.start.reaches",
                        startA,
                        durationS,
                        time(opensS));
    }

    private double spare(StartUp.Step step) {
        return band.earliestS(step.currentA()) / step.durationS();
    }

    private Text wire(List<Point> latest, List<Point> damage) {
        @Nullable Point nearest = null;
        double worst = Double.POSITIVE_INFINITY;
        for (Point turn : turns(latest, damage)) {
            double share = turn.seconds() / band.latestS(turn.currentA());
            if (share < worst) {
                worst = share;
                nearest = turn;
            }
        }
        if (nearest == null) {
            return Phrase.of(
                    "chart.wire.never",
                    Amount.amps(shorts.highestA()),
                    weakest.lead(),
                    Amount.celsius(weakest.shortTermC()));
        }
        double latestS = band.latestS(nearest.currentA());
        Amount reachesC = Amount.celsius(weakest.limitC(nearest.seconds()));
        Text afterS = time(nearest.seconds());
        Amount atA = Amount.amps(nearest.currentA());
        return Double.isInfinite(latestS)
                ? Phrase.of("chart.wire.unguarded", weakest.lead(), reachesC, afterS, atA)
                : Phrase.of(
                        worst > 1 ? "chart.wire.in-time" : "chart.wire.too-late",
                        weakest.lead(),
                        reachesC,
                        afterS,
                        atA,
                        time(latestS));
    }

    /**
     * Where the race between device and wire can be closest, from the rating to the short, with the
     * wire's time there.
     */
    private List<Point> turns(List<Point> latest, List<Point> damage) {
        List<Point> turns = new ArrayList<>();
        double toA = shorts.highestA();
        double fromA = Math.min(guard.device().ratingA(), toA);
        addTurn(turns, toA);
        addTurn(turns, fromA);
        for (Point point : latest) {
            if (point.currentA() > fromA && point.currentA() < toA) {
                addTurn(turns, point.currentA());
            }
        }
        for (Point point : damage) {
            if (point.currentA() > fromA
                    && point.currentA() < toA
                    && point.seconds() < Curve.NEVER_S) {
                turns.add(point);
            }
        }
        return turns;
    }

    private void addTurn(List<Point> turns, double currentA) {
        for (double besideA : new double[] {currentA * (1 - BESIDE), currentA * (1 + BESIDE)}) {
            turns.add(new Point(besideA, weakest.secondsTo().applyAsDouble(besideA)));
        }
    }

    private Text deadShort() {
        return Phrase.of("chart.shorts", cleared(shorts.lowestA()), cleared(shorts.highestA()));
    }

    private Text cleared(double currentA) {
        double latestS = band.latestS(currentA);
        Amount drawsA = Amount.amps(currentA);
        return Double.isInfinite(latestS)
                ? Phrase.of("chart.short.never", drawsA)
                : Phrase.of("chart.short.cleared", drawsA, time(latestS));
    }

    private static Text time(double seconds) {
        return seconds < 0.0001 ? Phrase.of("chart.instant") : Amount.seconds(seconds);
    }
}
