package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Supply;
import org.fusewright.core.pricing.Stock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Optional;
import java.util.OptionalDouble;

/** What the machine charges with, at speed, at idle, and at which voltage. */
class ChargingBalanceTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    private Optional<Check> find(String subject) {
        return Sizer.size(job.resolve(STOCK)).checks().stream()
                .filter(c -> c.code() == CheckCode.CHARGING_BALANCE)
                .filter(c -> c.subject().text().english().equals(subject))
                .findFirst();
    }

    private static void assertVerdict(Check check, Verdict verdict) {
        assertThat(check.verdict()).as(check.says().english()).isEqualTo(verdict);
        assertThat(check.margin() >= 0).isEqualTo(verdict == Verdict.PASS);
    }

    /** Common practice, no published source: all of the output at idle, and never a fail. */
    @ParameterizedTest(name = "8 A on {0} A at idle: {1}")
    @CsvSource({"10, PASS", "8, PASS", "7.9, CAUTION", "0.1, CAUTION"})
    void balancesAtIdle(double idleA, Verdict verdict) {
        job.supply = job.supply.withIdleOutputA(idleA);
        job.circuit("c").amps(8);

        assertVerdict(find("job, at idle").orElseThrow(), verdict);
        assertVerdict(find("job").orElseThrow(), Verdict.PASS);
    }

    @Test
    void saysNothingOfIdleWhereItIsNotKnown() {
        job.circuit("c").amps(8);

        assertThat(find("job, at idle")).isEmpty();
    }

    @Test
    void balancesAtIdleWhereTheOutputAtSpeedIsNotKnown() {
        job.supply = new Supply(12, 12.2, 14.2, 15, OptionalDouble.empty(), OptionalDouble.of(6));
        job.circuit("c").amps(8);

        assertVerdict(find("job, at idle").orElseThrow(), Verdict.CAUTION);
        assertThat(find("job").orElseThrow().verdict()).isEqualTo(Verdict.CAUTION);
    }

    @Test
    void rejectsMoreAtIdleThanAtSpeed() {
        assertThatIllegalArgumentException().isThrownBy(() -> job.supply.withIdleOutputA(41));
    }

    /** AC 43.13-1B 11-35 b (E49): 13 V on a 14 V system, 26 V on a 28 V one. */
    @ParameterizedTest(name = "{0} V system charging with {1} V: {2}")
    @CsvSource({
        "12, 14.2, PASS",
        "12, 13.0, PASS",
        "12, 12.9, CAUTION",
        "24, 26.0, PASS",
        "24, 25.9, CAUTION",
    })
    void asksForMoreThanALowBusWarning(double nominalV, double chargingV, Verdict verdict) {
        job.supply = new Supply(nominalV, nominalV, chargingV, 15, OptionalDouble.of(40));
        job.circuit("c").amps(8);

        Check check = find("job, charging voltage").orElseThrow();

        assertVerdict(check, verdict);
        assertThat(check.limit()).isEqualTo(nominalV == 12 ? 13 : 26);
    }

    @Test
    void hasNoWarningVoltageForSixVolts() {
        job.supply = new Supply(6, 6.1, 7.1, 15, OptionalDouble.of(40));
        job.circuit("c").amps(8);

        assertThat(find("job, charging voltage")).isEmpty();
    }
}
