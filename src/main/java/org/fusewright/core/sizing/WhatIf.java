package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Subject.Scope;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.quantity.Figures;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What becomes of a finished design when one thing differs from what it was made for: a hotter
 * place, a longer run, a thinner wire, another kind of device. Devices and wires stay as they were
 * chosen; only the verdicts are worked out anew. Looks at sizing alone: whether another device
 * still goes under the cap, for one, is not asked.
 */
public final class WhatIf {

    private static final double TEMPERATURE_STEP_C = 0.5;
    private static final double LENGTH_STEP_M = 0.01;
    private static final int FINE_DECIMALS = 4;

    /** Worst verdict first, then least margin. */
    private static final Comparator<Check> WORST =
            Comparator.comparing(Check::verdict, Comparator.reverseOrder())
                    .thenComparingDouble(Check::margin);

    private static final double[] USUAL_SHIFTS_C = {-20, -10, 0, 10, 20, 30, 40, 50, 60};
    private static final double[] USUAL_LENGTHS = {0.5, 1, 1.5, 2, 3, 5, 8};

    /** The thing that differs; the code is what requests and answers call it. */
    public enum Varied {
        /** The place round the leads; the block gets as much hotter. */
        AMBIENT("ambientC", Unit.CELSIUS, 200),
        /** The circuit's run. */
        RUN("runM", Unit.METRE, 100),
        /** The size of the circuit's trunk, in the colour and family that it has. */
        SIZE("gauge", Unit.NONE, Double.POSITIVE_INFINITY),
        /** The kind of the circuit's device, of the same rating or the next that is stocked. */
        KIND("kind", Unit.NONE, Double.POSITIVE_INFINITY);

        private final String code;
        private final Unit unit;
        private final double most;

        Varied(String code, Unit unit, double most) {
            this.code = code;
            this.unit = unit;
            this.most = most;
        }

        public String code() {
            return code;
        }

        /** Unit of the values; none for names. */
        public Unit unit() {
            return unit;
        }

        /** The highest value that is looked at; names have none. */
        public double most() {
            return most;
        }

        /** Whether values are numbers. */
        public boolean isNumber() {
            return unit != Unit.NONE;
        }
    }

    /**
     * The verdicts at one value.
     *
     * @param value as it was asked for
     * @param says what it means: "60 C", "1.5 mm2", "fuse 10 A"
     * @param verdict the worst of all checks
     * @param worse whether any check is worse than in the design
     * @param nearest the worst of what is worse than in the design; where nothing is, the check
     *     with least left before its limit, of those that change with the value
     * @param notPassed checks that do not pass, with those that do not pass in the design either
     */
    public record Point(
            String value,
            Text says,
            Verdict verdict,
            boolean worse,
            Check nearest,
            List<Check> notPassed) {

        public Point {
            notPassed = List.copyOf(notPassed);
        }
    }

    /**
     * @param circuit the circuit that is looked at, with its feed
     * @param designed the value of the design
     * @param unchangedTo the highest value up to which no verdict is worse than in the design;
     *     empty when values are names
     * @param standsTo the highest value up to which nothing fails that does not fail in the design;
     *     empty likewise
     */
    public record Answer(
            String circuit,
            Varied varied,
            String designed,
            List<Point> points,
            OptionalDouble unchangedTo,
            OptionalDouble standsTo) {

        public Answer {
            points = List.copyOf(points);
        }
    }

    private final ResolvedJob job;
    private final KeptSizes kept;
    private final ResolvedCircuit circuit;
    private final String deviceOwner;
    private final Map<Name, Check> designed = new HashMap<>();

    private WhatIf(ResolvedJob job, SizedJob designed, ResolvedCircuit circuit) {
        this.job = job;
        this.kept = KeptSizes.of(designed);
        this.circuit = circuit;
        this.deviceOwner = circuit.circuit().contactFrom().orElse(circuit.id());
        for (Check check : designed.checks()) {
            this.designed.put(nameOf(check), check);
        }
    }

    /**
     * @param circuitId of a circuit in the job
     */
    public static WhatIf of(ResolvedJob job, String circuitId) {
        ResolvedCircuit circuit =
                job.circuits().stream()
                        .filter(each -> each.id().equals(circuitId))
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException("no circuit " + circuitId));
        return new WhatIf(job, Sizer.size(job), circuit);
    }

    /** The place round the leads at each of these temperatures; the usual ones when none given. */
    public Answer hotter(List<Double> ambientC) {
        double base = job.job().surroundings().ambient().value();
        List<Double> values = ambientC.isEmpty() ? usualTemperatures(base) : ambientC;
        List<Judged> judged = new ArrayList<>();
        for (double value : values) {
            judged.add(judged(Varied.AMBIENT, value, atAmbient(value)));
        }
        return new Answer(
                circuit.id(),
                Varied.AMBIENT,
                figure(base),
                points(judged),
                highest(
                        base,
                        Varied.AMBIENT.most,
                        TEMPERATURE_STEP_C,
                        Verdict.CAUTION,
                        this::atAmbient),
                highest(
                        base,
                        Varied.AMBIENT.most,
                        TEMPERATURE_STEP_C,
                        Verdict.FAIL,
                        this::atAmbient));
    }

    /** The circuit's run at each of these lengths; the usual ones when none given. */
    public Answer longer(List<Double> runM) {
        double base = circuit.circuit().runM();
        List<Double> values = runM.isEmpty() ? usualLengths(base) : runM;
        List<Judged> judged = new ArrayList<>();
        for (double value : values) {
            judged.add(judged(Varied.RUN, value, atRun(value)));
        }
        return new Answer(
                circuit.id(),
                Varied.RUN,
                figure(base),
                points(judged),
                highest(base, Varied.RUN.most, LENGTH_STEP_M, Verdict.CAUTION, this::atRun),
                highest(base, Varied.RUN.most, LENGTH_STEP_M, Verdict.FAIL, this::atRun));
    }

    /** The sizes that the circuit's trunk could have instead, thin to thick. */
    public List<WireSize> listSizes() {
        return circuit.wires().stream().map(Wire::size).toList();
    }

    /** The circuit's trunk in each of these sizes; in all that are stocked when none given. */
    public Answer thinner(List<WireSize> sizes) {
        List<Judged> judged = new ArrayList<>();
        for (WireSize size : sizes.isEmpty() ? listSizes() : sizes) {
            Wire wire =
                    circuit.wires().stream()
                            .filter(each -> each.size().equals(size))
                            .findFirst()
                            .orElseThrow(
                                    () -> new IllegalArgumentException("not stocked: " + size));
            judged.add(
                    judged(
                            size.label(),
                            Text.verbatim(size.label()),
                            Sizer.judge(job, kept.withWire(trunkId(), wire))));
        }
        Wire trunk = kept.wires().get(trunkId());
        return new Answer(
                circuit.id(),
                Varied.SIZE,
                trunk.size().toString(),
                points(judged),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** The kinds that the circuit's device could be of. */
    public List<DeviceKind> listKinds() {
        List<DeviceKind> stocked = new ArrayList<>();
        for (DeviceKind kind : DeviceKind.values()) {
            if (!job.stock().listBlockDevices(kind).isEmpty()) {
                stocked.add(kind);
            }
        }
        return stocked;
    }

    /** The circuit's device of each of these kinds; of all that are stocked when none given. */
    public Answer otherKind(List<DeviceKind> kinds) {
        Device device = kept.devices().get(deviceOwner);
        List<Judged> judged = new ArrayList<>();
        for (DeviceKind kind : kinds.isEmpty() ? listKinds() : kinds) {
            Device other = kind == device.kind() ? device : nearest(kind, device.ratingA());
            judged.add(
                    judged(
                            kind.code(),
                            DeviceWords.byKind(other),
                            Sizer.judge(job, kept.withDevice(deviceOwner, other))));
        }
        return new Answer(
                circuit.id(),
                Varied.KIND,
                device.kind().code(),
                points(judged),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** The smallest of a kind that is not smaller, else its largest. */
    private Device nearest(DeviceKind kind, double ratingA) {
        List<Device> devices = job.stock().listBlockDevices(kind);
        for (Device device : devices) {
            if (device.ratingA() >= ratingA) {
                return device;
            }
        }
        return devices.getLast();
    }

    private String trunkId() {
        return circuit.id() + "/out";
    }

    private SizedJob atAmbient(double ambientC) {
        return Sizer.judge(job.withAmbient(ambientC), kept);
    }

    private SizedJob atRun(double runM) {
        return Sizer.judge(job.withRun(circuit.id(), runM), kept);
    }

    private static List<Double> usualTemperatures(double base) {
        List<Double> values = new ArrayList<>();
        for (double shiftC : USUAL_SHIFTS_C) {
            values.add(base + shiftC);
        }
        return values;
    }

    private static List<Double> usualLengths(double base) {
        List<Double> values = new ArrayList<>();
        for (double times : USUAL_LENGTHS) {
            if (times <= 1 || base * times <= Varied.RUN.most) {
                values.add(base * times);
            }
        }
        return values;
    }

    private static String figure(double value) {
        return Figures.of(value, FINE_DECIMALS);
    }

    /** The checks of this circuit at one value. */
    private record Judged(String value, Text says, List<Check> checks) {}

    private Judged judged(Varied varied, double value, SizedJob job) {
        return judged(figure(value), new Amount(value, varied.unit, FINE_DECIMALS), job);
    }

    private Judged judged(String value, Text says, SizedJob job) {
        return new Judged(value, says, job.checks().stream().filter(this::concerns).toList());
    }

    private List<Point> points(List<Judged> judged) {
        Set<Name> moved = new HashSet<>();
        for (Judged each : judged) {
            for (Check check : each.checks()) {
                if (isMoved(check)) {
                    moved.add(nameOf(check));
                }
            }
        }
        return judged.stream().map(each -> point(each, moved)).toList();
    }

    private boolean isMoved(Check check) {
        Check before = designed.get(nameOf(check));
        return before == null || before.margin() != check.margin();
    }

    private Point point(Judged judged, Set<Name> moved) {
        List<Check> checks = judged.checks();
        List<Check> notPassed =
                checks.stream().filter(check -> check.verdict() != Verdict.PASS).toList();
        Optional<Check> worse = checks.stream().filter(this::isWorse).min(WORST);
        Check nearest =
                worse.or(() -> leastLeft(checks, moved))
                        .or(() -> checks.stream().min(WORST))
                        .orElseThrow(
                                () ->
                                        new IllegalStateException(
                                                "a circuit without checks: " + circuit.id()));
        return new Point(
                judged.value(),
                judged.says(),
                worst(notPassed),
                worse.isPresent(),
                nearest,
                notPassed);
    }

    /** Of what passes and changes with the value. */
    private static Optional<Check> leastLeft(List<Check> checks, Set<Name> moved) {
        return checks.stream()
                .filter(check -> check.verdict() == Verdict.PASS)
                .filter(check -> moved.contains(nameOf(check)))
                .min(WORST);
    }

    private boolean isWorse(Check check) {
        Check before = designed.get(nameOf(check));
        return check.verdict().compareTo(before == null ? Verdict.PASS : before.verdict()) > 0;
    }

    private boolean concerns(Check check) {
        Scope scope = check.subject().scope();
        String id = check.subject().id();
        return scope == Scope.CIRCUIT && (id.equals(circuit.id()) || id.equals(deviceOwner))
                || scope == Scope.FEED && id.equals(circuit.feed().id());
    }

    private static Verdict worst(List<Check> checks) {
        Verdict worst = Verdict.PASS;
        for (Check check : checks) {
            worst = check.verdict().compareTo(worst) > 0 ? check.verdict() : worst;
        }
        return worst;
    }

    /** One value of what varies, judged. */
    private interface At {
        SizedJob judge(double value);
    }

    /**
     * The highest value, in whole steps, at which no verdict has become that bad: by halving, as
     * what has become bad stays so on the way up.
     */
    private OptionalDouble highest(double from, double to, double step, Verdict bad, At at) {
        long good = 0;
        long first = (long) Math.floor((to - from) / step) + 1;
        while (first - good > 1) {
            long middle = (good + first) / 2;
            if (hasBecome(bad, at.judge(from + middle * step))) {
                first = middle;
            } else {
                good = middle;
            }
        }
        return OptionalDouble.of(from + good * step);
    }

    private boolean hasBecome(Verdict bad, SizedJob judged) {
        for (Check check : judged.checks()) {
            if (concerns(check) && check.verdict().compareTo(bad) >= 0 && isWorse(check)) {
                return true;
            }
        }
        return false;
    }

    /** What a check has to itself within a kit. */
    private record Name(CheckCode code, Subject subject) {}

    private static Name nameOf(Check check) {
        return new Name(check.code(), check.subject());
    }
}
