package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.TimeCurrent.Gate;
import org.fusewright.core.quantity.Celsius;
import org.jspecify.annotations.Nullable;

import java.util.Arrays;
import java.util.List;

/**
 * How long a device takes to open, at the earliest and at the latest: straight lines between its
 * gates when both current and time are drawn in logarithms. Gates are those of ISO 8820-3 for blade
 * fuses, of SAE J553 types for breakers and the stated characteristic for electronic ones, as the
 * catalog has them; an open end sets no point.
 *
 * <p>Beyond the last gate, where nothing is stated (our own rule):
 *
 * <ul>
 *   <li>fuse: constant I2t from there, the law of an element that melts before heat leaves it;
 *   <li>manual-reset breaker: the same, but never faster than 10 ms to open its contacts (common
 *       practice, no published source);
 *   <li>auto-reset breaker: no faster than at its last gate, as its electronics need their time;
 *       for the earliest opening it may open at once.
 * </ul>
 *
 * <p>Up to the first gate of a curve a device does not open. Where its kind is sensitive to the
 * temperature around it, the gates go with the re-rated rating: for the earliest opening always;
 * for the latest only in the cold, as nobody can count on a place being hot.
 *
 * <p>Cheap to make: what it holds is worked out when it is first asked for. A band may be kept and
 * shared.
 */
final class TimeCurrentBand {

    private static final double LONGEST_S = ShortCircuitWithstand.LONGEST_S;
    private static final double CONTACTS_OPEN_S = 0.010;

    private final DeviceKind kind;
    private final List<Gate> gates;
    private final double earlyRatedA;
    private final double lateRatedA;
    private final double interruptingA;

    private @Nullable OpeningCurve earliest;
    private @Nullable OpeningCurve latest;
    private @Nullable Double clearsFromA;

    private TimeCurrentBand(Device device, double factor) {
        this.kind = device.kind();
        this.gates = device.gates().gates();
        this.earlyRatedA = device.ratingA() * factor;
        this.lateRatedA = device.ratingA() * Math.max(1, factor);
        this.interruptingA = device.interruptingA();
    }

    static TimeCurrentBand of(Device device, Celsius surrounding) {
        return new TimeCurrentBand(device, device.rerating().factorAt(surrounding));
    }

    /** The rating at the temperature around it. */
    double ratedA() {
        return earlyRatedA;
    }

    /** Earliest opening in seconds; infinite when the current is held. */
    double earliestS(double currentA) {
        OpeningCurve curve = earliest();
        if (!curve.isStated()) {
            return 0;
        }
        if (currentA <= curve.firstA()) {
            return Double.POSITIVE_INFINITY;
        }
        if (currentA <= curve.lastA()) {
            return curve.at(currentA);
        }
        return kind == DeviceKind.AUTO_RESET ? 0 : curve.atConstantEnergy(currentA);
    }

    /** Latest opening in seconds; infinite when it may never open. */
    double latestS(double currentA) {
        OpeningCurve curve = latest();
        if (!curve.isStated() || currentA < curve.firstA()) {
            return Double.POSITIVE_INFINITY;
        }
        if (currentA <= curve.lastA()) {
            return curve.at(currentA);
        }
        return switch (kind) {
            case FUSE -> curve.atConstantEnergy(currentA);
            case MANUAL_RESET -> Math.max(contactsOpenS(curve), curve.atConstantEnergy(currentA));
            case AUTO_RESET -> curve.lastS();
        };
    }

    private static double contactsOpenS(OpeningCurve curve) {
        return Math.min(curve.lastS(), CONTACTS_OPEN_S);
    }

    /** The least current that surely opens the device, after whatever time; infinite when none. */
    double surelyOpensA() {
        OpeningCurve curve = latest();
        return curve.isStated() ? curve.firstA() : Double.POSITIVE_INFINITY;
    }

    /**
     * The least current that surely opens the device within a time, in amperes; its breaking
     * capacity when none does.
     */
    double surelyOpensA(double withinS) {
        OpeningCurve curve = latest();
        if (!curve.isStated()) {
            return interruptingA;
        }
        double reachesA = curve.reaches(withinS);
        if (reachesA <= curve.lastA()) {
            return reachesA;
        }
        boolean neverSoFast =
                switch (kind) {
                    case FUSE -> false;
                    case MANUAL_RESET -> withinS < contactsOpenS(curve);
                    case AUTO_RESET -> true;
                };
        return neverSoFast ? interruptingA : curve.lastA() * Math.sqrt(curve.lastS() / withinS);
    }

    /** The same within the time that a short may last, {@link ShortCircuitWithstand#LONGEST_S}. */
    double clearsFromA() {
        @Nullable Double known = clearsFromA;
        if (known == null) {
            known = surelyOpensA(LONGEST_S);
            clearsFromA = known;
        }
        return known;
    }

    /**
     * The most energy that it lets through for any short between two currents, in A2s, each counted
     * for at most {@link ShortCircuitWithstand#LONGEST_S}. Between gates I2t rises or falls all the
     * way, so the worst lies at an end, at a gate or just under the current where the time is no
     * longer cut off.
     */
    double letThroughA2s(double fromA, double toA) {
        double worst = Math.max(energyA2s(fromA), energyA2s(toA));
        double cutOffA = clearsFromA();
        if (fromA < cutOffA && cutOffA < toA) {
            worst = Math.max(worst, cutOffA * cutOffA * LONGEST_S);
        }
        OpeningCurve curve = latest();
        double[] gatesA = curve.currentsA();
        for (int i = 0; i < gatesA.length; i++) {
            double gateA = gatesA[i];
            if (fromA < gateA && gateA < toA) {
                worst = Math.max(worst, gateA * gateA * Math.min(LONGEST_S, curve.timeS(i)));
            }
        }
        return worst;
    }

    private double energyA2s(double currentA) {
        return currentA * currentA * Math.min(LONGEST_S, latestS(currentA));
    }

    /**
     * The currents at which either curve bends or jumps, inside a range and rising. Between two of
     * them the logarithms of time and current lie on a straight line, so a scan that looks at them
     * and at the ends misses no corner.
     */
    double[] turningPointsA(double fromA, double toA) {
        double[] early = earliestTurningPointsA(fromA, toA);
        double[] late = latestTurningPointsA(fromA, toA);
        double[] both = Arrays.copyOf(early, early.length + late.length);
        System.arraycopy(late, 0, both, early.length, late.length);
        Arrays.sort(both);
        int count = 0;
        for (int i = 0; i < both.length; i++) {
            if (i == 0 || both[i] > both[i - 1]) {
                both[count++] = both[i];
            }
        }
        return Arrays.copyOf(both, count);
    }

    /** The same for the earliest opening alone. */
    double[] earliestTurningPointsA(double fromA, double toA) {
        return inside(earliest().currentsA(), fromA, toA);
    }

    /** The same for the latest opening alone. */
    double[] latestTurningPointsA(double fromA, double toA) {
        OpeningCurve curve = latest();
        double[] bendsA = curve.currentsA();
        if (kind == DeviceKind.MANUAL_RESET
                && curve.isStated()
                && curve.lastS() > CONTACTS_OPEN_S) {
            bendsA = Arrays.copyOf(bendsA, bendsA.length + 1);
            bendsA[bendsA.length - 1] = curve.lastA() * Math.sqrt(curve.lastS() / CONTACTS_OPEN_S);
        }
        return inside(bendsA, fromA, toA);
    }

    private static double[] inside(double[] risingA, double fromA, double toA) {
        int from = 0;
        while (from < risingA.length && risingA[from] <= fromA) {
            from++;
        }
        int to = risingA.length;
        while (to > from && risingA[to - 1] >= toA) {
            to--;
        }
        return Arrays.copyOfRange(risingA, from, to);
    }

    private OpeningCurve earliest() {
        OpeningCurve known = earliest;
        if (known == null) {
            known = curve(earlyRatedA, true);
            earliest = known;
        }
        return known;
    }

    private OpeningCurve latest() {
        OpeningCurve known = latest;
        if (known == null) {
            known = curve(lateRatedA, false);
            latest = known;
        }
        return known;
    }

    private OpeningCurve curve(double ratedA, boolean early) {
        int points = 0;
        for (Gate gate : gates) {
            points += isStated(gate, early) ? 1 : 0;
        }
        double[] currentsA = new double[points];
        double[] timesS = new double[points];
        int i = 0;
        for (Gate gate : gates) {
            if (isStated(gate, early)) {
                currentsA[i] = gate.percent() / 100 * ratedA;
                timesS[i++] = early ? gate.minS() : gate.maxS();
            }
        }
        return new OpeningCurve(currentsA, timesS);
    }

    private static boolean isStated(Gate gate, boolean early) {
        return early ? gate.minS() > 0 : !Double.isInfinite(gate.maxS());
    }
}
