package org.fusewright.core;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobResolver;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.Location;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.job.ReturnPath;
import org.fusewright.core.job.Supply;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireSize;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A job made in code, quiet by default: 12 V, 12.2 to 14.2, battery 15 milliohm, 30 C everywhere,
 * no bundle, feeds "battery" and "switched", fuses, chassis return.
 */
public final class TestJob {

    public static final String BATTERY = "battery";
    public static final String SWITCHED = "switched";

    public Supply supply = new Supply(12, 12.2, 14.2, 15, OptionalDouble.of(40));
    public double ambientC = 30;
    public double blockAmbientC = 30;
    public int bundledLeads = 1;
    public double slackPercent = 5;
    public List<DeviceKind> devices = List.of(DeviceKind.FUSE);
    public Optional<String> wireFamily = Optional.empty();
    public final List<Feed> feeds =
            new ArrayList<>(
                    List.of(
                            new Feed(BATTERY, Feed.PERMANENT, 0.6, 0.15),
                            new Feed(SWITCHED, Feed.SWITCHED, 0.9, 0.15)));
    public final List<Location> locations = new ArrayList<>();
    private final List<TestCircuit> circuits = new ArrayList<>();

    /** A circuit with defaults that a test overrides. */
    public static final class TestCircuit {

        private final String id;
        private final List<Load> loads = new ArrayList<>();
        public String feed = BATTERY;
        public String location = "main";
        public double runM = 1;
        public ReturnPath returnPath = ReturnPath.CHASSIS;
        public Optional<List<DeviceKind>> devices = Optional.empty();
        public OptionalDouble ratingA = OptionalDouble.empty();
        public Optional<WireSize> gauge = Optional.empty();
        public double maxDropPercent = 10;
        public Optional<RelayUse> relay = Optional.empty();

        private TestCircuit(String id) {
            this.id = id;
        }

        /** A load that draws the same at any voltage and starts gently. */
        public TestCircuit amps(double amps) {
            return load(LoadKind.SOCKET, amps, 1, 0);
        }

        public TestCircuit load(LoadKind kind, double amps, int count, double branchM) {
            loads.add(
                    new Load(
                            "Load " + (char) ('A' + loads.size()),
                            kind,
                            amps,
                            12,
                            count,
                            kind.usualInrush(),
                            Duty.CONTINUOUS,
                            branchM));
            return this;
        }

        public TestCircuit load(Load load) {
            loads.add(load);
            return this;
        }

        public List<Load> loads() {
            return List.copyOf(loads);
        }

        public TestCircuit feed(String id) {
            feed = id;
            return this;
        }

        public TestCircuit runM(double metres) {
            runM = metres;
            return this;
        }

        public TestCircuit wired() {
            returnPath = ReturnPath.WIRE;
            return this;
        }

        public TestCircuit kinds(DeviceKind... kinds) {
            devices = Optional.of(List.of(kinds));
            return this;
        }

        public TestCircuit ratingA(double amps) {
            ratingA = OptionalDouble.of(amps);
            return this;
        }

        public TestCircuit gauge(String size) {
            gauge = WireSize.parse(size);
            return this;
        }

        public TestCircuit maxDropPercent(double percent) {
            maxDropPercent = percent;
            return this;
        }

        public TestCircuit relay(String triggerFrom) {
            relay =
                    Optional.of(
                            new RelayUse(
                                    triggerFrom, 0.8, 0.3, Optional.empty(), Optional.empty()));
            return this;
        }

        public TestCircuit relayOn(String owner) {
            relay =
                    Optional.of(
                            new RelayUse(
                                    RelayUse.CONTROLLER,
                                    0.8,
                                    0.3,
                                    Optional.of(owner),
                                    Optional.empty()));
            return this;
        }
    }

    public TestCircuit circuit(String id) {
        TestCircuit circuit = new TestCircuit(id);
        circuits.add(circuit);
        return circuit;
    }

    public static Load load(String title, LoadKind kind, double amps, Inrush inrush, Duty duty) {
        return new Load(title, kind, amps, 12, 1, inrush, duty, 0);
    }

    public Job build() {
        return new Job(
                "T-1",
                "Test machine",
                "Test shop",
                TestStock.CURRENCY,
                supply,
                new Surroundings(new Celsius(ambientC), new Celsius(blockAmbientC), bundledLeads),
                feeds,
                circuits.stream().map(this::circuitOf).toList(),
                locations,
                new Choices(
                        devices,
                        wireFamily,
                        true,
                        true,
                        0,
                        1,
                        slackPercent,
                        new Millimetres(40),
                        new Millimetres(10),
                        new Millimetres(150),
                        new Millimetres(100),
                        ArrangementKind.CHEAPEST));
    }

    private Circuit circuitOf(TestCircuit circuit) {
        return new Circuit(
                circuit.id,
                "Circuit " + circuit.id,
                circuit.feed,
                circuit.location,
                false,
                circuit.runM,
                circuit.returnPath,
                Optional.empty(),
                circuit.devices.orElse(devices),
                circuit.ratingA,
                circuit.gauge,
                circuit.maxDropPercent,
                circuit.relay,
                Optional.empty(),
                circuit.loads);
    }

    public ResolvedJob resolve(Stock stock) {
        return JobResolver.resolve(build(), stock);
    }
}
