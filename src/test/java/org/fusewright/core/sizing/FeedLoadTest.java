package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Optional;

/** What a feed is sized for: the share that is drawn at once, and what the job fixes. */
class FeedLoadTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    private SizedFeed feed() {
        return Sizer.size(job.resolve(STOCK)).feeds().getFirst();
    }

    private Check check(CheckCode code, String subject) {
        return find(code, subject).orElseThrow();
    }

    private Optional<Check> find(CheckCode code, String subject) {
        return Sizer.size(job.resolve(STOCK)).checks().stream()
                .filter(c -> c.code() == code && c.subject().text().english().equals(subject))
                .findFirst();
    }

    private void setFeed(Feed feed) {
        job.feeds.set(0, feed);
    }

    private Feed battery() {
        return job.feeds.getFirst();
    }

    /**
     * 14, 7 and 3 A: the share of 24 A, but never less than the 14 A of one circuit. 80 % of 30 A
     * are 24 A; the main device is larger than the 20 A that the 14 A need.
     */
    @ParameterizedTest(name = "{0} of 24 A, 14 A in one: {1} A, main device {2} A")
    @CsvSource({"1, 24, 30", "0.85, 20.4, 30", "0.8, 19.2, 25", "0.6, 14.4, 25", "0.3, 14, 25"})
    void carriesTheShareThatIsDrawnAtOnce(double share, double runningA, double mainA) {
        job.ambientC = 20;
        setFeed(battery().withDiversity(share));
        job.blockAmbientC = 20;
        job.circuit("a").amps(14);
        job.circuit("b").amps(7);
        job.circuit("c").amps(3);

        SizedFeed feed = feed();

        assertThat(feed.runningA()).isCloseTo(runningA, within(1e-9));
        assertThat(feed.connectedA()).isCloseTo(24, within(1e-9));
        assertThat(feed.mainDevice().orElseThrow().ratingA()).isEqualTo(mainA);
        assertThat(feed.leads())
                .filteredOn(lead -> lead.id().endsWith("/main") || lead.id().endsWith("/source"))
                .hasSize(2)
                .allMatch(lead -> lead.currentA() == feed.runningA());
        assertThat(check(CheckCode.FEED_LOAD, "feed battery").value()).isEqualTo(feed.runningA());
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"0.8, 16 A of the 20 A behind it", "0.3, largest circuit alone"})
    void saysWhatOfTheLoadCounts(double share, String words) {
        setFeed(battery().withDiversity(share));
        job.circuit("a").amps(12);
        job.circuit("b").amps(8);

        assertThat(feed().why()).anyMatch(why -> why.english().contains(words));
        Check load = check(CheckCode.FEED_LOAD, "feed battery");
        assertThat(load.says().english()).contains(words);
        assertThat(load.basis().text().english()).contains("IEC 61439", "from memory");
    }

    @Test
    void saysNothingOfAShareWhereAllIsDrawn() {
        job.circuit("a").amps(12);

        assertThat(feed().why()).noneMatch(why -> why.english().contains("drawn at once"));
        assertThat(check(CheckCode.FEED_LOAD, "feed battery").basis().text().english())
                .doesNotContain("61439");
    }

    /**
     * Six circuits of 5 A behind splices for few leads: no link may carry more than the main lead.
     */
    @Test
    void passesOnNoMoreThanItCarries() {
        setFeed(battery().withDiversity(0.5));
        for (int i = 0; i < 8; i++) {
            job.circuit("c" + i).amps(5);
        }

        SizedFeed feed = feed();

        assertThat(feed.leads()).anyMatch(lead -> lead.id().contains("/link-"));
        assertThat(feed.leads()).allMatch(lead -> lead.currentA() <= feed.runningA());
    }

    /**
     * A motor of 4 A that starts at 24 A beside 12 A: 36 A at once, with half of them drawn 30 A on
     * a permanent feed. A switched feed starts half of all, or the motor beside half.
     */
    @ParameterizedTest(name = "terminal {0}, {1}: starts at {2} A")
    @CsvSource({"30, 1, 36", "30, 0.5, 30", "15, 1, 36", "15, 0.5, 30"})
    void startsBesideTheShareOfTheOthers(String terminal, double share, double startA) {
        setFeed(new Feed(TestJob.BATTERY, terminal, 0.6, 0.15).withDiversity(share));
        job.circuit("a").amps(12);
        job.circuit("m")
                .load(TestJob.load("M", LoadKind.MOTOR, 4, new Inrush(6, 100), Duty.CONTINUOUS));

        assertThat(check(CheckCode.INRUSH, "feed battery").says().english())
                .contains("draws up to " + Math.round(startA) + " A");
    }

    @ParameterizedTest(name = "{0} A fixed for 12 A at 20 C: load {1}, selectivity {2}")
    @CsvSource({
        "100, PASS, PASS",
        "20, PASS, CAUTION",
        "15, PASS, FAIL",
    })
    void keepsTheRatingThatTheJobFixes(double ratingA, Verdict load, Verdict selectivity) {
        job.ambientC = 20;
        setFeed(battery().withRatingA(ratingA));
        job.circuit("a").amps(12).ratingA(15);

        assertThat(feed().mainDevice().map(Device::ratingA)).contains(ratingA);
        assertThat(feed().why().getFirst().english()).contains("the job fixes the rating");
        assertThat(check(CheckCode.FEED_LOAD, "feed battery").verdict()).isEqualTo(load);
        assertThat(check(CheckCode.SELECTIVITY, "feed battery").verdict()).isEqualTo(selectivity);
    }

    /** A main device that is too small still gets a wire that it protects, not the thickest. */
    @Test
    void choosesTheWireForAFixedRatingAsForAnyOther() {
        job.ambientC = 20;
        setFeed(battery().withRatingA(15));
        job.circuit("a").amps(14);

        assertThat(check(CheckCode.FEED_LOAD, "feed battery").verdict()).isEqualTo(Verdict.CAUTION);
        assertThat(check(CheckCode.OVERLOAD_PROTECTION, "feed battery").verdict())
                .isEqualTo(Verdict.PASS);
        assertThat(feed().leads().getFirst().wire().copperMm2()).isLessThan(6);
        assertThat(feed().why().getFirst().english())
                .contains("although 15 A carries 12 A, not 14 A");
    }

    @ParameterizedTest(name = "{0} fixed for 12 A: {1}")
    @CsvSource({"0.5 mm2, FAIL", "4 mm2, PASS", "6 mm2, PASS"})
    void keepsTheSizeThatTheJobFixes(String size, Verdict overload) {
        setFeed(battery().withGauge(WireSize.parse(size).orElseThrow()));
        job.circuit("a").amps(12).ratingA(20);
        job.circuit("b").amps(8).ratingA(15);

        SizedFeed feed = feed();

        assertThat(feed.leads())
                .filteredOn(lead -> lead.id().endsWith("/main") || lead.id().endsWith("/source"))
                .hasSize(2)
                .allMatch(lead -> lead.wire().size().equals(WireSize.parse(size).orElseThrow()));
        assertThat(feed.why()).anyMatch(why -> why.english().contains("the job fixes the size"));
        assertThat(check(CheckCode.OVERLOAD_PROTECTION, "feed battery").verdict())
                .isEqualTo(overload);
    }

    /** Pigtails end in cavities, so a thick main lead must not force its size on them. */
    @Test
    void leavesTheOtherLeadsFree() {
        setFeed(battery().withGauge(WireSize.parse("16 mm2").orElseThrow()));
        job.circuit("a").amps(5);
        job.circuit("b").amps(5);

        assertThat(feed().leads())
                .filteredOn(lead -> lead.role() == LeadRole.PIGTAIL)
                .hasSize(2)
                .allMatch(lead -> lead.wire().copperMm2() < 16);
    }

    /** The test holders take 0.75 to 6 mm2 and 4 to 25 mm2. */
    @ParameterizedTest(name = "{0} with {1} A: {2}")
    @CsvSource({
        "0.75 mm2, 15, PASS",
        "0.5 mm2, 15, FAIL",
        "10 mm2, 15, FAIL",
        "10 mm2, 40, PASS",
        "2.5 mm2, 40, FAIL",
    })
    void checksThatTheHolderTakesTheFixedSize(String size, double ratingA, Verdict verdict) {
        setFeed(battery().withGauge(WireSize.parse(size).orElseThrow()).withRatingA(ratingA));
        job.circuit("a").amps(5);
        job.circuit("b").amps(2);

        Check check = check(CheckCode.TERMINAL_FIT, "feed battery, holder");

        assertThat(check.verdict()).as(check.says().english()).isEqualTo(verdict);
        assertThat(check.margin() >= 0).isEqualTo(verdict == Verdict.PASS);
    }

    @Test
    void takesAMainDeviceWhoseHolderTakesTheFixedSize() {
        setFeed(battery().withGauge(WireSize.parse("10 mm2").orElseThrow()));
        job.circuit("a").amps(5);
        job.circuit("b").amps(2);

        assertThat(check(CheckCode.TERMINAL_FIT, "feed battery, holder").verdict())
                .isEqualTo(Verdict.PASS);
        assertThat(feed().mainDevice().map(Device::ratingA)).contains(40.0);
    }

    @Test
    void asksNothingOfTheHolderWhereNothingIsFixed() {
        job.circuit("a").amps(5);

        assertThat(find(CheckCode.TERMINAL_FIT, "feed battery, holder")).isEmpty();
    }

    @Test
    void rejectsWhatIsNotStocked() {
        setFeed(battery().withRatingA(35).withGauge(WireSize.parse("35 mm2").orElseThrow()));
        job.circuit("a").amps(5);

        assertThatExceptionOfType(MalformedJobException.class)
                .isThrownBy(() -> job.resolve(STOCK))
                .satisfies(
                        malformed ->
                                assertThat(malformed.problems())
                                        .anyMatch(
                                                p ->
                                                        p.pointer().equals("/feeds/0/ratingA")
                                                                && p.detail()
                                                                        .english()
                                                                        .contains(
                                                                                "no 35 A main"
                                                                                    + " device in"
                                                                                    + " stock;"
                                                                                    + " there are"
                                                                                    + " 15, 20"))
                                        .anyMatch(
                                                p ->
                                                        p.pointer().equals("/feeds/0/gauge")
                                                                && p.detail()
                                                                        .english()
                                                                        .contains("not stocked"))
                                        .hasSize(2));
    }
}
