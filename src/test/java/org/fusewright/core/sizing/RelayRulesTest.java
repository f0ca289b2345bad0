package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.Supply;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Contact, pull-in, hold and suppression. */
class RelayRulesTest {

    private static final Stock STOCK = TestStock.usual().build();
    private static final String CIRCUIT = "circuit c";
    private static final String HOLD = CIRCUIT + ", hold while starting";
    private static final String SUPPRESSION = CIRCUIT + ", coil suppression";
    private static final Pattern FACTOR = Pattern.compile("(?:.*>= )?(\\d+) x.*");
    private static final Pattern SHARE = Pattern.compile("(\\d+) %.*");

    private final TestJob job = new TestJob();

    private Check check(CheckCode code, String subject) {
        return find(STOCK, code, subject).orElseThrow();
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
     * AC 43.13-1B table 11-4 as a list of sources puts it (E47), row by row. The rows that are not
     * from the table ask for more or the same: a switch maker's rule (seen as a quotation), and
     * shares of a rating from memory, of low confidence. Those are not followed, and this says by
     * which rows.
     */
    @ParameterizedTest(name = "{0}, {1}: {2} ({3})")
    @CsvFileSource(resources = "/facts/switch_relay_derating.csv", numLinesToSkip = 1)
    void followsTheTableAndNoneOfTheStricterRules(
            String source, String load, String rule, String status) {
        boolean ofTable = rule.contains(">=");
        double nominalV = source.contains("28 V") ? 24 : 12;
        for (LoadKind kind : kinds(load)) {
            double ours = RelayRules.contactFactor(kind, nominalV);
            if (ofTable) {
                assertThat(status).isEqualTo("SEEN");
                assertThat(ours).as(kind.code()).isEqualTo(factor(rule, load, kind));
            } else {
                assertThat(ours).as(kind.code()).isLessThan(factor(rule, load, kind));
            }
        }
    }

    private static LoadKind[] kinds(String load) {
        return switch (load) {
            case "lamp" -> new LoadKind[] {LoadKind.FILAMENT_LAMP};
            case "inductive" -> new LoadKind[] {LoadKind.COIL};
            case "motor" -> new LoadKind[] {LoadKind.MOTOR, LoadKind.PUMP};
            case "resistive" -> new LoadKind[] {LoadKind.RESISTIVE};
            case "inductive/motor/filament" ->
                    new LoadKind[] {LoadKind.COIL, LoadKind.MOTOR, LoadKind.FILAMENT_LAMP};
            default -> throw new IllegalArgumentException(load);
        };
    }

    /** "5 x" is a factor of 5, "40 %" one of 2.5; "40 / 20 / 10 %" has one for each kind. */
    private static double factor(String rule, String load, LoadKind kind) {
        Matcher factor = FACTOR.matcher(rule);
        if (factor.matches()) {
            return Double.parseDouble(factor.group(1));
        }
        if (load.contains("/")) {
            return switch (kind) {
                case COIL -> 100 / 40.0;
                case MOTOR -> 100 / 20.0;
                default -> 100 / 10.0;
            };
        }
        Matcher share = SHARE.matcher(rule);
        assertThat(share.matches()).as(rule).isTrue();
        return 100 / Double.parseDouble(share.group(1));
    }

    /** E47, worked: 28 V, lamp of 2 A: 16 A; 12 V, motor of 10 A: 20 A (AC 43.13-1B table 11-4). */
    @ParameterizedTest(name = "E47: {0} V, {1} of {2} A: {3} A")
    @CsvSource({"24, FILAMENT_LAMP, 2, 16", "12, MOTOR, 10, 20"})
    void asksForTheContactOfTheTable(double nominalV, LoadKind kind, double amps, double needsA) {
        job.supply = new Supply(nominalV, nominalV, nominalV, 15, OptionalDouble.of(40));
        job.circuit("c")
                .load(
                        new Load(
                                "L",
                                kind,
                                amps,
                                nominalV,
                                1,
                                kind.usualInrush(),
                                Duty.CONTINUOUS,
                                0))
                .relay(RelayUse.CONTROLLER);

        assertThat(check(CheckCode.RELAY_CONTACT, CIRCUIT).value()).isCloseTo(needsA, within(1e-9));
    }

    /** Copper, (234.5 + T)/254.5, as relay application notes work it out: calculated. */
    @ParameterizedTest(name = "coil at {0} C: x {1}")
    @CsvSource({"20, 1", "85, 1.255", "125, 1.413"})
    void needsMoreVoltsWithAHotCoil(double coilC, double factor) {
        assertThat(Conductor.temperatureFactor(new Celsius(coilC)))
                .isCloseTo(factor, within(0.0005));
        job.blockAmbientC = coilC;
        job.circuit("c").amps(4).relay(RelayUse.CONTROLLER);

        assertThat(check(CheckCode.RELAY_COIL, CIRCUIT).limit())
                .isCloseTo(7.8 * factor, within(0.005));
    }

    /** 60 A from a battery of {0} milliohm: 40 take 2.4 V of 12.2; 9.79 V are needed at 85 C. */
    @ParameterizedTest(name = "{0} milliohm: {1}")
    @CsvSource({"30, PASS", "45, FAIL"})
    void pullsInWithWhatEverythingElseLeaves(double milliohm, Verdict verdict) {
        job.supply = new Supply(12, 12.2, 14.2, milliohm, OptionalDouble.of(40));
        job.blockAmbientC = 85;
        job.circuit("c").amps(4).relay(RelayUse.CONTROLLER);
        for (int i = 0; i < 4; i++) {
            job.circuit("other" + i).amps(14);
        }

        Check check = check(CheckCode.RELAY_COIL, CIRCUIT);

        assertVerdict(check, verdict);
        assertThat(check.value()).isCloseTo(12.2 - 60 * milliohm / 1000, within(0.02));
    }

    /**
     * Pull-in 7.8 V, drop-out 1.2 V, at 20 C. A motor that starts at 10 times 10 A beside a worn
     * battery.
     */
    @ParameterizedTest(name = "battery of {0} milliohm: {1}")
    @CsvSource({"15, PASS", "120, CAUTION", "1000, FAIL"})
    void holdsWhileTheWorstStartLasts(double milliohm, Verdict verdict) {
        job.supply = new Supply(12, 12.2, 14.2, milliohm, OptionalDouble.of(40));
        job.blockAmbientC = 20;
        job.circuit("c")
                .load(TestJob.load("M", LoadKind.MOTOR, 10, new Inrush(10, 200), Duty.CONTINUOUS))
                .relay(RelayUse.CONTROLLER);

        Check check = check(CheckCode.RELAY_COIL, HOLD);

        assertVerdict(check, verdict);
        assertThat(check.limit()).isCloseTo(7.8, within(1e-9));
        assertThat(check.value()).isLessThan(check(CheckCode.RELAY_COIL, CIRCUIT).value() + 1e-9);
    }

    /** A coil on the feed that starts the motor sees that feed's own drop as well. */
    @Test
    void seesMoreOfTheStartOnTheFeedThatTriggersIt() {
        job.circuit("m")
                .load(TestJob.load("M", LoadKind.MOTOR, 8, new Inrush(8, 200), Duty.CONTINUOUS));
        job.circuit("c").amps(1).relay(TestJob.BATTERY);
        double onFeedV = check(CheckCode.RELAY_COIL, HOLD).value();

        TestJob other = new TestJob();
        other.circuit("m")
                .load(TestJob.load("M", LoadKind.MOTOR, 8, new Inrush(8, 200), Duty.CONTINUOUS));
        other.circuit("c").amps(1).relay(RelayUse.CONTROLLER);
        double fromControllerV =
                Sizer.size(other.resolve(STOCK)).checks().stream()
                        .filter(c -> c.subject().text().english().equals(HOLD))
                        .findFirst()
                        .orElseThrow()
                        .value();

        assertThat(onFeedV).isLessThan(fromControllerV - 0.2);
    }

    @Test
    void hasNothingToHoldWhereNothingStarts() {
        job.circuit("c").amps(4).relay(RelayUse.CONTROLLER);

        assertThat(find(STOCK, CheckCode.RELAY_COIL, HOLD)).isEmpty();
    }

    /**
     * Suppression at the coil: a Californian road authority's relay note; a diode's slow release:
     * one quoted note, the rest from memory.
     */
    @ParameterizedTest(name = "{0}, {1} on the contact, triggered by {2}: {3}")
    @CsvSource({
        "resistor, MOTOR, controller, PASS, limits its voltage peak",
        "diode, LED, controller, PASS, do not mind",
        "diode, RESISTIVE, battery, PASS, do not mind",
        "diode, MOTOR, controller, CAUTION, shortens its life",
        "diode, PUMP, controller, CAUTION, shortens its life",
        "diode, COIL, battery, CAUTION, shortens its life",
        "none, LED, controller, CAUTION, kill the controller",
        "none, LED, battery, CAUTION, wears the switch",
    })
    void checksTheSuppressionOfTheCoil(
            String means, LoadKind kind, String trigger, Verdict verdict, String words) {
        Stock stock =
                TestStock.usual()
                        .without(Relay.class)
                        .with(suppressed(TestStock.relay("R", 12, 100, 7.8), means), "5.40")
                        .build();
        job.circuit("c").load(kind, 3, 1, 0).relay(trigger);

        Check check = find(stock, CheckCode.RELAY_COIL, SUPPRESSION).orElseThrow();

        assertVerdict(check, verdict);
        assertThat(check.says().english()).contains(words);
        assertThat(check.unit()).isEmpty();
        assertThat(check.basis().text().english()).contains("from memory");
    }

    private static Relay suppressed(Relay relay, String means) {
        return new Relay(
                relay.item(),
                relay.coilV(),
                relay.coilOhm(),
                relay.pullInV(),
                relay.dropOutV(),
                relay.contactA(),
                relay.contactMilliohm(),
                relay.heightMm(),
                means,
                relay.pinout());
    }
}
