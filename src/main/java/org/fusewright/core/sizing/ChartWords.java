package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.sizing.TimeCurrentChart.Demand;
import org.fusewright.core.sizing.TimeCurrentChart.Endurance;
import org.fusewright.core.sizing.TimeCurrentChart.Guard;
import org.fusewright.core.sizing.TimeCurrentChart.Point;
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

    static String device(Device device) {
        return Say.rating(device.ratingA())
                + " "
                + device.kind().code()
                + (device.kind() == DeviceKind.FUSE ? "" : " breaker");
    }

    /**
     * @param latest the device's curve over the whole axis of currents
     * @param damage the wire's
     */
    String describe(List<Point> latest, List<Point> damage) {
        return String.join(" ", opening(latest), start(), wire(latest, damage), deadShort());
    }

    private String opening(List<Point> latest) {
        String named = "The " + device(guard.device());
        for (Point point : latest) {
            if (point.seconds() < Curve.NEVER_S) {
                double earliestS = band.earliestS(point.currentA());
                return named
                        + " opens "
                        + (earliestS > 0 && Double.isFinite(earliestS)
                                ? "between " + time(earliestS) + " and "
                                : "within ")
                        + time(point.seconds())
                        + " at "
                        + Say.amps(point.currentA())
                        + ".";
            }
        }
        return named + " has no current that surely opens it.";
    }

    private String start() {
        StartUp.@Nullable Step worst = null;
        for (StartUp.Step step : demand.startUp().steps()) {
            if (worst == null || spare(step) < spare(worst)) {
                worst = step;
            }
        }
        return running()
                + (worst == null
                        ? " They draw no more at their start."
                        : " Their start of " + start(worst));
    }

    private String running() {
        double opensS = band.earliestS(demand.carriedA());
        return "The loads run at "
                + Say.amps(demand.carriedA())
                + (Double.isInfinite(opensS)
                        ? ", which the device holds for good."
                        : ", which may open the device after " + time(opensS) + ".");
    }

    private String start(StartUp.Step step) {
        double opensS = band.earliestS(step.currentA());
        String said = Say.amps(step.currentA()) + " for " + time(step.durationS());
        if (Double.isInfinite(opensS)) {
            return said + " is a current that the device holds for good.";
        }
        return said
                + (opensS >= step.durationS() ? " stays below" : " reaches into")
                + " the device's earliest curve, which at that current is "
                + time(opensS)
                + ".";
    }

    private double spare(StartUp.Step step) {
        return band.earliestS(step.currentA()) / step.durationS();
    }

    private String wire(List<Point> latest, List<Point> damage) {
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
            return "Nothing up to "
                    + Say.amps(shorts.highestA())
                    + " brings the weakest lead, "
                    + weakest.lead()
                    + ", to "
                    + Math.round(weakest.shortTermC())
                    + " C while the device is closed.";
        }
        double latestS = band.latestS(nearest.currentA());
        return "The weakest lead, "
                + weakest.lead()
                + ", would reach "
                + Math.round(weakest.limitC(nearest.seconds()))
                + " C after "
                + time(nearest.seconds())
                + " at "
                + Say.amps(nearest.currentA())
                + "; the device "
                + (Double.isInfinite(latestS)
                        ? "may never open at that current."
                        : (worst > 1 ? "has opened after " : "may take ")
                                + time(latestS)
                                + (worst > 1 ? "." : ", which is too late."));
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

    private String deadShort() {
        return "A dead short at the far end draws "
                + cleared(shorts.lowestA())
                + "; one at the device draws "
                + cleared(shorts.highestA())
                + ".";
    }

    private String cleared(double currentA) {
        double latestS = band.latestS(currentA);
        return Say.amps(currentA)
                + (Double.isInfinite(latestS)
                        ? " and may never open the device"
                        : " and is cleared in " + time(latestS));
    }

    private static String time(double seconds) {
        return seconds < 0.0001 ? "less than 0.1 ms" : Say.seconds(seconds);
    }
}
