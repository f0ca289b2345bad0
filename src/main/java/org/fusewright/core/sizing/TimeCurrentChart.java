package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.TimeCurrent.Gate;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * What a device, the loads and the weakest wire behind it and dead shorts do, as times over
 * currents: the plot that shows at a glance whether the device holds through the start and opens
 * before the wire is too hot. Every point lies on both axes; a curve that goes on beyond them ends
 * at their edge, and pieces between points are straight when both axes are logarithmic.
 *
 * @param device what opens: "10 A fuse"
 * @param lead the weakest lead behind it, with its size
 * @param earliest when the device may open, from the axis' top on; it does not left of it
 * @param latest when it has opened at the latest; empty when no current surely opens it
 * @param demand what the loads draw while they start and run, and for how long
 * @param starts where {@code demand} comes nearest to the device: each start's end
 * @param damage when the weakest wire reaches its short-term limit; empty when it never does
 * @param description all of this in sentences, for people who do not see the plot
 */
public record TimeCurrentChart(
        Text device,
        String lead,
        LogAxis currentA,
        LogAxis timeS,
        List<Point> earliest,
        List<Point> latest,
        List<Point> demand,
        List<Point> starts,
        List<Point> damage,
        Fault atDevice,
        Fault atFarEnd,
        Text description) {

    /** The axis of currents holds the first gates of a device even where no short reaches them. */
    private static final double GATES_SHARE = 2;

    /** The time axis reaches so far up at least. */
    private static final double LONG_S = 1000;

    /** Faster than this is as good as at once, so the time axis reaches no further down. */
    private static final double INSTANT_S = 0.001;

    /** So long for a current. */
    public record Point(double currentA, double seconds) {}

    /**
     * A dead short.
     *
     * @param clearsS when the device has opened at the latest; infinite when it may never
     */
    public record Fault(double currentA, double clearsS) {}

    /** A device where it sits. */
    record Guard(Device device, Celsius surrounding) {

        TimeCurrentBand band() {
            return TimeCurrentBand.of(device, surrounding);
        }
    }

    /** What all loads behind a device draw. */
    record Demand(StartUp startUp, double carriedA) {}

    /**
     * What a lead's wire survives.
     *
     * @param lead with its size
     * @param shortTermC conductor temperature that it may reach for a time
     * @param onceC conductor temperature that it survives once, in a short of 5 s at most
     * @param secondsTo how long a current takes to bring it there; infinite when it never does
     */
    record Endurance(String lead, double shortTermC, double onceC, DoubleUnaryOperator secondsTo) {

        /** The temperature that counts when it is reached after so many seconds. */
        double limitC(double seconds) {
            return seconds <= ShortCircuitWithstand.LONGEST_S ? onceC : shortTermC;
        }
    }

    public TimeCurrentChart {
        earliest = List.copyOf(earliest);
        latest = List.copyOf(latest);
        demand = List.copyOf(demand);
        starts = List.copyOf(starts);
        damage = List.copyOf(damage);
    }

    /**
     * @param weakest the lead that suffers first
     * @param shorts prospective currents at the far end and at the device
     */
    static TimeCurrentChart of(
            Guard guard, Demand demand, Endurance weakest, ShortCircuitWithstand.Span shorts) {
        TimeCurrentBand band = guard.band();
        LogAxis currentA = currentAxis(guard.device(), demand, shorts);
        double[] bendsA = bendsA(guard);
        List<Point> earliest = Curve.trace(band::earliestS, currentA, bendsA);
        List<Point> latest = Curve.trace(band::latestS, currentA, bendsA);
        List<Point> damage = Curve.trace(weakest.secondsTo(), currentA, new double[0]);
        Fault atDevice = new Fault(shorts.highestA(), band.latestS(shorts.highestA()));
        Fault atFarEnd = new Fault(shorts.lowestA(), band.latestS(shorts.lowestA()));
        LogAxis timeS = timeAxis(latest, demand.startUp(), atDevice);
        return new TimeCurrentChart(
                DeviceWords.inFull(guard.device()),
                weakest.lead(),
                currentA,
                timeS,
                Curve.clip(earliest, timeS),
                Curve.clip(latest, timeS),
                steps(demand, timeS),
                demand.startUp().steps().stream()
                        .map(step -> new Point(step.currentA(), step.durationS()))
                        .toList(),
                Curve.clip(damage, timeS),
                atDevice,
                atFarEnd,
                new ChartWords(guard, demand, weakest, shorts).describe(latest, damage));
    }

    /**
     * The outline of where the device may open or not: between both curves, and above the earliest
     * one where it never surely opens. Its end is its start; empty where no earliest time is
     * stated.
     */
    public List<Point> band() {
        List<Point> outline = new ArrayList<>(earliest);
        if (outline.isEmpty()) {
            return outline;
        }
        if (outline.getLast().currentA() < currentA.most()) {
            outline.add(new Point(currentA.most(), timeS.least()));
        }
        if (latest.isEmpty()) {
            outline.add(new Point(currentA.most(), timeS.most()));
        } else {
            outline.addAll(latest.reversed());
        }
        outline.add(earliest.getFirst());
        return outline;
    }

    private static LogAxis currentAxis(
            Device device, Demand demand, ShortCircuitWithstand.Span shorts) {
        return LogAxis.covering(
                Math.min(
                        Math.min(demand.carriedA(), device.ratingA()),
                        Math.min(shorts.lowestA(), shorts.highestA())),
                Math.max(
                        Math.max(demand.startUp().peakA(), GATES_SHARE * device.ratingA()),
                        Math.max(shorts.lowestA(), shorts.highestA())));
    }

    private static LogAxis timeAxis(List<Point> latest, StartUp startUp, Fault fastest) {
        double least = Math.min(10 * INSTANT_S, Math.max(INSTANT_S, fastest.clearsS() / 3));
        double most = LONG_S;
        for (Point point : latest) {
            if (point.seconds() < Curve.NEVER_S) {
                most = Math.max(most, point.seconds());
            }
        }
        for (StartUp.Step step : startUp.steps()) {
            least = Math.min(least, step.durationS() / 2);
            most = Math.max(most, step.durationS());
        }
        return LogAxis.covering(least, most);
    }

    /** Currents at which either curve of the device turns or jumps. */
    private static double[] bendsA(Guard guard) {
        double ratingA = guard.device().ratingA();
        double factor = guard.device().rerating().factorAt(guard.surrounding());
        List<Gate> gates = guard.device().gates().gates();
        double[] bendsA = new double[2 * gates.size()];
        for (int i = 0; i < gates.size(); i++) {
            bendsA[2 * i] = gates.get(i).percent() / 100 * ratingA * factor;
            bendsA[2 * i + 1] = gates.get(i).percent() / 100 * ratingA * Math.max(1, factor);
        }
        return bendsA;
    }

    /** Each start's current for its time, then the running current for good. */
    private static List<Point> steps(Demand demand, LogAxis timeS) {
        List<Point> steps = new ArrayList<>();
        double fromS = timeS.least();
        for (StartUp.Step step : demand.startUp().steps()) {
            steps.add(new Point(step.currentA(), fromS));
            fromS = step.durationS();
            steps.add(new Point(step.currentA(), fromS));
        }
        steps.add(new Point(demand.carriedA(), fromS));
        steps.add(new Point(demand.carriedA(), timeS.most()));
        return steps;
    }
}
