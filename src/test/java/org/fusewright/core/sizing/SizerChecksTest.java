package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.Supply;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Each rule is seen to pass and to object. */
class SizerChecksTest {

    private static final Stock STOCK = TestStock.usual().build();
    private static final String CIRCUIT = "circuit c";
    private static final String FEED = "feed battery";

    private final TestJob job = new TestJob();

    private Check check(CheckCode code, String subject) {
        return check(STOCK, code, subject);
    }

    private Check check(Stock stock, CheckCode code, String subject) {
        return find(stock, code, subject).orElseThrow();
    }

    private Optional<Check> find(Stock stock, CheckCode code, String subject) {
        return Sizer.size(job.resolve(stock)).checks().stream()
                .filter(c -> c.code() == code && c.subject().text().english().equals(subject))
                .findFirst();
    }

    private static void assertVerdict(Check check, Verdict verdict) {
        assertThat(check.verdict()).as(check.says().english()).isEqualTo(verdict);
        assertThat(check.margin() >= 0).as("margin of " + check).isEqualTo(verdict == Verdict.PASS);
    }

    /**
     * One circuit computed by hand: 4 A, 7.5 A fuse (13.3 milliohm) behind a 15 A main (6.67) in a
     * 3.2 milliohm holder, 0.75 m of 1 mm2 and 1 m of 0.5 mm2 at 30 C.
     *
     * <ul>
     *   <li>may carry: 1 mm2 25.8 A (heat balance); 0.5 mm2, below the smallest row of ISO 10133,
     *       1.05 x 20 A x 0.5/0.75 = 14 A
     *   <li>conductors: 30 + 95 sqrt(4/25.8) = 67.4 C and 30 + 95 sqrt(4/14) = 80.8 C
     *   <li>0.75 x 18.5 x 301.9/254.5 = 16.46 and 37.1 x 315.3/254.5 = 45.96 milliohm
     *   <li>contacts: 3.2 + 6.67 + 3.4 (terminal) + 13.33 + 4.5 (terminal) = 31.1 milliohm
     *   <li>4 A x 93.52 milliohm = 0.3741 V, 3.117 % of 12 V
     *   <li>short at the device: 14.2 V / (15 + 13.875 + 3.2) milliohm = 442.7 A; at the load 12.2
     *       V / (15 + 93.52) milliohm = 112.4 A
     * </ul>
     */
    @Test
    void agreesWithAHandCalculation() {
        job.circuit("c").amps(4);

        SizedJob sized = Sizer.size(job.resolve(STOCK));

        SizedCircuit circuit = sized.circuits().getFirst();
        assertThat(circuit.device().orElseThrow().number().value()).isEqualTo("F7.5");
        assertThat(sized.feeds().getFirst().mainDevice().orElseThrow().number().value())
                .isEqualTo("MAIN-15");
        assertThat(sized.feeds().getFirst().leads())
                .extracting(lead -> lead.wire().size().label())
                .containsOnly("1.0 mm2");
        assertThat(circuit.leads().getFirst().wire().size().label()).isEqualTo("0.5 mm2");
        assertThat(circuit.leads().getFirst().dropV()).isCloseTo(0.18384, within(1e-4));
        assertThat(circuit.loads().getFirst().dropV()).isCloseTo(0.37408, within(1e-4));
        assertThat(circuit.loads().getFirst().dropPercent()).isCloseTo(3.117, within(1e-3));
        assertThat(check(CheckCode.INTERRUPTING_CAPACITY, CIRCUIT).value())
                .isCloseTo(442.71, within(0.05));
        assertThat(check(CheckCode.INTERRUPTING_CAPACITY, FEED).value())
                .isCloseTo(677, within(0.05));
        assertThat(check(CheckCode.FAULT_CLEARING, CIRCUIT).value())
                .isCloseTo(112.42, within(0.05));
        assertThat(sized.checks()).allMatch(check -> check.verdict() == Verdict.PASS);
    }

    @ParameterizedTest(name = "{0} A on a fixed 5 A fuse at 20 C: {1}")
    @CsvSource({"4.0, PASS", "4.1, CAUTION", "5.0, CAUTION", "5.1, FAIL"})
    void checksTheRunningLoad(double amps, Verdict verdict) {
        job.blockAmbientC = 20;
        job.circuit("c").amps(amps).ratingA(5);

        assertVerdict(check(CheckCode.RUNNING_LOAD, CIRCUIT), verdict);
    }

    @ParameterizedTest(name = "a motor of 3 A on a fixed {0} A fuse: {1}")
    @CsvSource({"5, FAIL", "10, PASS"})
    void checksTheStart(double ratingA, Verdict verdict) {
        job.circuit("c")
                .load(TestJob.load("M", LoadKind.MOTOR, 3, new Inrush(6, 100), Duty.CONTINUOUS))
                .ratingA(ratingA);

        assertVerdict(check(CheckCode.INRUSH, CIRCUIT), verdict);
        assertVerdict(check(CheckCode.INRUSH, FEED), Verdict.PASS);
    }

    @Test
    void hasNothingToSayOfALoadWithoutAStart() {
        job.circuit("c").amps(3);

        assertThat(find(STOCK, CheckCode.INRUSH, CIRCUIT)).isEmpty();
    }

    @ParameterizedTest(name = "0.5 mm2, 14 A at 125 C, behind {0} A: {1}")
    @CsvSource({"10, PASS", "15, CAUTION", "20, CAUTION", "25, FAIL"})
    void checksThatTheDeviceProtectsTheWire(double ratingA, Verdict verdict) {
        job.circuit("c").amps(3).ratingA(ratingA).gauge("0.5 mm2");

        assertVerdict(check(CheckCode.OVERLOAD_PROTECTION, CIRCUIT), verdict);
    }

    /**
     * 33 CFR 183.455 (c) with table 5 (E23, E26): 16 AWG of 60 C carries 15 A, so the most is 22.5
     * A; 20 A is the largest usual blade. ISO 10133 gives that much copper 8 A only (from memory),
     * so a person must agree from there on.
     */
    @ParameterizedTest(name = "16 AWG of 60 C behind {0} A: {1}")
    @CsvSource({"7.5, PASS", "15, CAUTION", "20, CAUTION", "22.5, CAUTION", "25, FAIL"})
    void followsTheRegulationOnSixteenGauge(double ratingA, Verdict verdict) {
        WireSize size = WireSize.ofAwg(16);
        Wire wire =
                new Wire(
                        TestStock.item("W"),
                        "boat",
                        size,
                        new WireColour("RD"),
                        size.areaMm2(),
                        2.5,
                        14,
                        60,
                        "PVC");
        LaidWire laid =
                LaidWire.of(
                        wire,
                        new Surroundings(new Celsius(30), new Celsius(30), 1),
                        0,
                        TerminalChoice.CavityEnd.NONE);

        assertVerdict(
                OverloadProtection.check(
                        Subject.circuit("c"),
                        TestStock.fuse(ratingA),
                        List.of(new ProtectedLead("c/out", laid, 5))),
                verdict);
    }

    /** An electronic breaker lets some 800 A pass for 20 ms: 0.5 mm2 is too thin for that. */
    @ParameterizedTest(name = "{0}, {1}: {2}")
    @CsvSource({"AUTO_RESET, 0.5 mm2, FAIL", "AUTO_RESET, 1.5 mm2, PASS", "FUSE, 0.5 mm2, PASS"})
    void checksADeadShort(DeviceKind kind, String size, Verdict verdict) {
        job.supply = new Supply(12, 12.2, 14.2, 10, OptionalDouble.of(40));
        job.feeds.set(0, new Feed(TestJob.BATTERY, Feed.PERMANENT, 0.1, 0.1));
        job.circuit("c").amps(15).runM(0.3).kinds(kind).ratingA(20).gauge(size);

        assertVerdict(check(CheckCode.SHORT_CIRCUIT_WITHSTAND, CIRCUIT), verdict);
    }

    @ParameterizedTest(name = "battery of {0} milliohm: {1}")
    @CsvSource({"30, PASS", "4, FAIL"})
    void checksThatTheMainDeviceBreaksTheShort(double milliohm, Verdict verdict) {
        job.supply = new Supply(12, 12.2, 14.2, milliohm, OptionalDouble.of(40));
        job.circuit("c").amps(5);

        assertVerdict(check(CheckCode.INTERRUPTING_CAPACITY, FEED), verdict);
    }

    @ParameterizedTest(name = "{0} m of 0.5 mm2 behind 15 A: {1}")
    @CsvSource({"2, PASS", "40, FAIL"})
    void checksThatAFarShortClears(double runM, Verdict verdict) {
        job.circuit("c").amps(1).runM(runM).ratingA(15).gauge("0.5 mm2").maxDropPercent(90);

        assertVerdict(check(CheckCode.FAULT_CLEARING, CIRCUIT), verdict);
    }

    @ParameterizedTest(name = "1 m of 0.5 mm2, 4 A, {0} % allowed: {1}")
    @CsvSource({"3.2, PASS", "3.0, FAIL"})
    void checksTheVoltageDrop(double maxDropPercent, Verdict verdict) {
        job.circuit("c").amps(4).gauge("0.5 mm2").ratingA(7.5).maxDropPercent(maxDropPercent);
        job.feeds.set(0, new Feed(TestJob.BATTERY, Feed.PERMANENT, 0.6, 0.15));

        Check check = check(CheckCode.VOLTAGE_DROP, "circuit c, load Load A");

        assertVerdict(check, verdict);
        assertThat(check.limit()).isEqualTo(maxDropPercent);
    }

    @ParameterizedTest(name = "terminals for {0} A: {1}")
    @CsvSource({"10, PASS", "3, FAIL"})
    void checksTheTerminals(double maxA, Verdict verdict) {
        Stock stock =
                TestStock.usual()
                        .without(Terminal.class)
                        .with(TestStock.terminal("T", 0.35, 6, maxA, 3), "0.20")
                        .build();
        job.circuit("c").amps(4);

        assertVerdict(check(stock, CheckCode.TERMINAL_CURRENT, CIRCUIT), verdict);
        assertVerdict(check(stock, CheckCode.TERMINAL_CURRENT, FEED), verdict);
    }

    @Test
    void objectsWhenNoTerminalFitsAtAll() {
        Stock stock = TestStock.usual().without(Terminal.class).build();
        job.circuit("c").amps(4);

        assertVerdict(check(stock, CheckCode.TERMINAL_CURRENT, CIRCUIT), Verdict.FAIL);
    }

    @ParameterizedTest(name = "{0}, {1} A on a 30 A contact: {2}")
    @CsvSource({
        "SOCKET, 14, PASS",
        "SOCKET, 16, CAUTION",
        "MOTOR, 15, PASS",
        "FILAMENT_LAMP, 5, PASS",
        "FILAMENT_LAMP, 7, CAUTION",
        "RESISTIVE, 20, PASS",
        "SOCKET, 31, FAIL"
    })
    void checksTheRelayContact(LoadKind kind, double amps, Verdict verdict) {
        job.circuit("c").load(kind, amps, 1, 0).relay(RelayUse.CONTROLLER);

        assertVerdict(check(CheckCode.RELAY_CONTACT, CIRCUIT), verdict);
    }

    /** AC 43.13-1B table 11-4 (E47): all eight rows. */
    @ParameterizedTest(name = "AC 43.13-1B table 11-4: {0} V, {1}: {2}")
    @CsvFileSource(resources = "/facts/ac4313_table_11_4_switch_derating.csv", numLinesToSkip = 1)
    void matchesTheContactFactors(double systemV, String load, double factor) {
        LoadKind kind =
                switch (load) {
                    case "lamp" -> LoadKind.FILAMENT_LAMP;
                    case "inductive relay/solenoid" -> LoadKind.COIL;
                    case "resistive heater" -> LoadKind.RESISTIVE;
                    case "motor" -> LoadKind.MOTOR;
                    default -> throw new IllegalArgumentException(load);
                };

        assertThat(RelayRules.contactFactor(kind, systemV)).isEqualTo(factor);
        assertThat(RelayRules.contactFactor(kind, systemV == 28 ? 24 : 6)).isEqualTo(factor);
    }

    /** A coil that pulls in at 7.8 V cold needs 7.8 x 319.5/254.5 = 9.79 V at 85 C. */
    @ParameterizedTest(name = "{0} V in a block of {1} C: {2}")
    @CsvSource({"9.9, 85, PASS", "9.7, 85, FAIL", "9.7, 20, PASS"})
    void checksThatTheCoilPullsIn(double engineOffV, double blockC, Verdict verdict) {
        job.supply = new Supply(12, engineOffV, 14.2, 15, OptionalDouble.of(40));
        job.blockAmbientC = blockC;
        job.circuit("c").amps(4).relay(RelayUse.CONTROLLER);

        Check check = check(CheckCode.RELAY_COIL, CIRCUIT);

        assertVerdict(check, verdict);
        assertThat(check.limit()).isCloseTo(blockC == 20 ? 7.8 : 9.79, within(0.005));
    }

    @ParameterizedTest(name = "four circuits of {0} A: {1}")
    @CsvSource({"15, PASS", "21, CAUTION", "25.5, FAIL"})
    void checksTheFeedsLoad(double amps, Verdict verdict) {
        job.ambientC = 20;
        for (int i = 0; i < 4; i++) {
            job.circuit("c" + i).amps(amps);
        }

        assertVerdict(check(CheckCode.FEED_LOAD, FEED), verdict);
    }

    @ParameterizedTest(name = "branch {0} A: {1}")
    @CsvSource({"7.5, PASS", "10, CAUTION", "15, CAUTION", "30, FAIL"})
    void checksThatTheBranchOpensFirst(double branchA, Verdict verdict) {
        Stock stock =
                TestStock.usual()
                        .without(p -> p instanceof Device d && d.form() == BladeForm.HIGH_CURRENT)
                        .build();
        job.circuit("c").amps(2).ratingA(branchA);

        assertVerdict(check(stock, CheckCode.SELECTIVITY, FEED), verdict);
    }

    /** 33 CFR 183.455 (b) (E24): 7 in are 0.178 m, 40 in are 1.016 m. */
    @ParameterizedTest(name = "{0} m from the source: {1}")
    @CsvSource({"0.17, PASS", "0.18, CAUTION", "1.01, CAUTION", "1.02, FAIL"})
    void checksTheWayFromTheSource(double distanceM, Verdict verdict) {
        job.feeds.set(0, new Feed(TestJob.BATTERY, Feed.PERMANENT, 0.6, distanceM));
        job.circuit("c").amps(4);

        assertVerdict(check(CheckCode.SOURCE_PROTECTION, FEED), verdict);
    }

    /** AC 43.13-1B 11-35 (E48): 80 % of the output. */
    @ParameterizedTest(name = "8 A continuous on {0} A of output: {1}")
    @CsvSource({"10, PASS", "9, CAUTION", "7.9, FAIL"})
    void checksTheChargingBalance(double outputA, Verdict verdict) {
        job.supply = new Supply(12, 12.2, 14.2, 15, OptionalDouble.of(outputA));
        job.circuit("c")
                .amps(8)
                .load(TestJob.load("Horn", LoadKind.SOCKET, 9, new Inrush(1, 0), Duty.MOMENTARY));

        assertVerdict(check(CheckCode.CHARGING_BALANCE, "job"), verdict);
    }

    @Test
    void asksForTheChargingOutput() {
        job.supply = new Supply(12, 12.2, 14.2, 15, OptionalDouble.empty());
        job.circuit("c").amps(8);

        Check check = check(CheckCode.CHARGING_BALANCE, "job");

        assertThat(check.verdict()).isEqualTo(Verdict.CAUTION);
        assertThat(check.says().english()).contains("should be 10 A or more");
    }

    @ParameterizedTest(name = "a {0} on {1}: {2}")
    @CsvSource({"PUMP, AUTO_RESET, CAUTION", "MOTOR, AUTO_RESET, CAUTION", "PUMP, FUSE, PASS"})
    void checksWhatMayStartByItself(LoadKind kind, DeviceKind device, Verdict verdict) {
        job.circuit("c").load(kind, 4, 1, 0).kinds(device);

        assertVerdict(check(CheckCode.AUTOMATIC_RESTART, CIRCUIT), verdict);
    }

    @Test
    void leavesAloneWhatDoesNotMove() {
        job.circuit("c").load(LoadKind.LED, 2, 1, 0).kinds(DeviceKind.AUTO_RESET);

        assertThat(find(STOCK, CheckCode.AUTOMATIC_RESTART, CIRCUIT)).isEmpty();
    }

    @Test
    void checksThatNotEveryLampHangsOnOneDevice() {
        job.circuit("c").load(LoadKind.LED, 1, 2, 0.5);
        assertVerdict(check(CheckCode.LIGHTING_SEPARATION, "job"), Verdict.CAUTION);

        job.circuit("d").load(LoadKind.FILAMENT_LAMP, 1, 1, 0);
        assertVerdict(check(CheckCode.LIGHTING_SEPARATION, "job"), Verdict.PASS);
    }

    @Test
    void countsAShareOfADeviceAsOneDevice() {
        job.circuit("c").load(LoadKind.LED, 1, 1, 0);
        job.circuit("d").load(LoadKind.LED, 1, 1, 0).relayOn("c");

        assertVerdict(check(CheckCode.LIGHTING_SEPARATION, "job"), Verdict.CAUTION);
    }

    @ParameterizedTest(name = "branches of {0} m: {1}")
    @CsvSource({"0.31, PASS", "0.3, CAUTION"})
    void checksWhereSplicesLie(double branchM, Verdict verdict) {
        job.circuit("c").load(LoadKind.LED, 1, 2, branchM);

        assertVerdict(check(CheckCode.SPLICE_PLACEMENT, CIRCUIT), verdict);
        assertVerdict(check(CheckCode.SPLICE_PLACEMENT, CIRCUIT + ", splice parts"), Verdict.PASS);
    }

    @Test
    void objectsWhenNoSpliceTakesTheCopper() {
        Stock stock =
                TestStock.usual()
                        .without(Splice.class)
                        .with(new Splice(TestStock.item("J"), 3, 0.5, 1.2, 0.1), "1")
                        .build();
        job.circuit("c").load(LoadKind.LED, 1, 2, 0.5);

        assertVerdict(
                check(stock, CheckCode.SPLICE_PLACEMENT, CIRCUIT + ", splice parts"), Verdict.FAIL);
    }

    /** The bundle is ours, not the regulation's; the temperature is both. */
    @ParameterizedTest(name = "0.5 mm2 behind 20 A, {0} leads, {1} C: {2}")
    @CsvSource({"1, 30, CAUTION", "7, 30, CAUTION", "1, 85, FAIL", "7, 85, FAIL"})
    void toleratesTheBundleButNotTheHeat(int leads, double ambientC, Verdict verdict) {
        job.bundledLeads = leads;
        job.ambientC = ambientC;
        job.circuit("c").amps(3).ratingA(20).gauge("0.5 mm2");

        assertVerdict(check(CheckCode.OVERLOAD_PROTECTION, CIRCUIT), verdict);
    }

    @Test
    void looksAtTheLeadsBehindTheMainDeviceOnly() {
        job.circuit("c").amps(4);

        assertThat(check(CheckCode.OVERLOAD_PROTECTION, FEED).says().english())
                .contains("battery/main, 1.0 mm2");
    }

    /** 80 m of 0.5 mm2 at 0.14 A lose some 0.4 V on the way to the coil. */
    @ParameterizedTest(name = "trigger of {0} m: {1}")
    @CsvSource({"0.8, PASS", "80, FAIL"})
    void countsWhatTheTriggerLoses(double triggerM, Verdict verdict) {
        job.supply = new Supply(12, 9.95, 14.2, 15, OptionalDouble.of(40));
        job.blockAmbientC = 85;
        job.circuit("c").amps(4).relay =
                Optional.of(
                        new RelayUse(
                                RelayUse.CONTROLLER,
                                triggerM,
                                0.3,
                                Optional.empty(),
                                Optional.empty()));

        assertVerdict(check(CheckCode.RELAY_COIL, CIRCUIT), verdict);
    }

    /** A thin wire's terminal may carry less than the wire: then a thicker wire is taken. */
    @Test
    void takesAThickerWireForAStrongerTerminal() {
        Stock stock =
                TestStock.usual()
                        .without(Terminal.class)
                        .with(TestStock.terminal("TA", 0.35, 1.05, 3, 4), "0.20")
                        .with(TestStock.terminal("TB", 1.5, 6, 25, 2), "0.25")
                        .build();
        job.circuit("c").amps(4).relay(RelayUse.CONTROLLER);

        SizedCircuit circuit = Sizer.size(job.resolve(stock)).circuits().getFirst();

        assertThat(circuit.leads())
                .filteredOn(l -> l.role() == LeadRole.TRUNK || l.role() == LeadRole.JUMPER)
                .hasSize(2)
                .allMatch(l -> l.wire().size().label().equals("1.5 mm2"));
        assertThat(circuit.why())
                .anyMatch(why -> why.english().contains("a terminal on 1.0 mm2 carries 3 A"));
    }

    /** 4 m of feed at 10 A: 1.5 mm2 would be protected, the drop asks for more. */
    @Test
    void takesAThickerFeedForItsDrop() {
        job.feeds.set(0, new Feed(TestJob.BATTERY, Feed.PERMANENT, 4, 0.15));
        job.circuit("c").amps(5);
        job.circuit("d").amps(5);

        SizedFeed feed = Sizer.size(job.resolve(STOCK)).feeds().getFirst();
        double leadsV = feed.leads().get(0).dropV() + feed.leads().get(1).dropV();
        double contactsV =
                10
                        * (feed.mainDevice().orElseThrow().milliohm()
                                + feed.holder().orElseThrow().contactMilliohm())
                        / 1000;
        Wire wire = feed.leads().get(1).wire();

        assertThat(100 * (leadsV + contactsV) / 12).isLessThanOrEqualTo(2);
        assertThat(wire.copperMm2()).isGreaterThan(1.5);
        assertThat(Ampacity.tabledA(1.5, new Celsius(125)))
                .isGreaterThanOrEqualTo(feed.mainDevice().orElseThrow().ratingA());
    }

    /** Only with its feed sized is it known what a device must break. */
    @ParameterizedTest(name = "battery of {0} milliohm: {1}")
    @CsvSource({"40, MANUAL_RESET", "8, FUSE"})
    void choosesAgainWhenTheFeedLetsTooMuchThrough(double milliohm, DeviceKind kind) {
        TestStock stock = TestStock.usual().without(SizerChecksTest::isManual);
        for (double ratingA : new double[] {5, 10, 20}) {
            Device strong = TestStock.manualReset(ratingA);
            stock.with(
                    new Device(
                            strong.item(),
                            strong.kind(),
                            strong.form(),
                            strong.ratingA(),
                            strong.maxVoltageV(),
                            300,
                            strong.heightMm(),
                            strong.milliohm(),
                            strong.colour(),
                            strong.gates(),
                            strong.rerating()),
                    "6");
        }
        job.supply = new Supply(12, 12.2, 14.2, milliohm, OptionalDouble.of(40));
        job.circuit("c").amps(5).kinds(DeviceKind.MANUAL_RESET, DeviceKind.FUSE);

        SizedCircuit circuit = Sizer.size(job.resolve(stock.build())).circuits().getFirst();

        assertThat(circuit.device().orElseThrow().kind()).isEqualTo(kind);
    }

    private static boolean isManual(Part part) {
        return part instanceof Device d && d.kind() == DeviceKind.MANUAL_RESET;
    }
}
