package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.stream.LongStream;

class WhatIfTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    private WhatIf whatIf() {
        return WhatIf.of(job.resolve(STOCK), "c");
    }

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    /** A design that is judged where it was made gets the verdicts that it had. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void judgesAnUnchangedDesignAsItWas(long seed) {
        ResolvedJob resolved = SizerLimitsTest.randomJob(seed).resolve(STOCK);
        SizedJob sized = Sizer.size(resolved);

        SizedJob judged = Sizer.judge(resolved, KeptSizes.of(sized));

        assertThat(judged.checks()).isEqualTo(sized.checks());
        for (int i = 0; i < sized.circuits().size(); i++) {
            assertThat(judged.circuits().get(i).leads()).isEqualTo(sized.circuits().get(i).leads());
        }
        for (int i = 0; i < sized.feeds().size(); i++) {
            assertThat(judged.feeds().get(i).leads()).isEqualTo(sized.feeds().get(i).leads());
        }
    }

    @Test
    void tellsHowHotItMayGet() {
        job.circuit("c").amps(6);

        Answer answer = whatIf().hotter(List.of(30.0, 80.0, 124.0));

        assertThat(answer.designed()).isEqualTo("30");
        assertThat(answer.points()).extracting(Point::value).containsExactly("30", "80", "124");
        assertThat(answer.points())
                .extracting(point -> point.says().english())
                .startsWith("30 C", "80 C");
        assertThat(answer.points().getLast().verdict()).isEqualTo(Verdict.FAIL);
        double unchangedTo = answer.unchangedTo().orElseThrow();
        assertThat(unchangedTo).isBetween(30.0, 123.0);
        assertThat(answer.standsTo().orElseThrow()).isGreaterThanOrEqualTo(unchangedTo);
        assertThat(notPassedAt(unchangedTo)).hasSameSizeAs(notPassedAt(30));
        assertThat(notPassedAt(unchangedTo + 0.5)).hasSizeGreaterThan(notPassedAt(30).size());
    }

    private List<Check> notPassedAt(double ambientC) {
        return whatIf().hotter(List.of(ambientC)).points().getFirst().notPassed();
    }

    /** 3 % of 12 V are 0.36 V; the run that uses them up is found to the centimetre. */
    @Test
    void tellsHowLongTheRunMayBe() {
        job.circuit("c").amps(5).runM(1).maxDropPercent(3);

        Answer answer = whatIf().longer(List.of(1.0, 20.0));

        Point far = answer.points().getLast();
        assertThat(far.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(far.notPassed()).extracting(Check::code).contains(CheckCode.VOLTAGE_DROP);
        double unchangedTo = answer.unchangedTo().orElseThrow();
        assertThat(dropAt(unchangedTo)).isLessThanOrEqualTo(3);
        assertThat(dropAt(unchangedTo + 0.02)).isGreaterThan(3);
    }

    private double dropAt(double runM) {
        ResolvedJob resolved = job.resolve(STOCK);
        KeptSizes kept = KeptSizes.of(Sizer.size(resolved));
        return Sizer.judge(resolved.withRun("c", runM), kept)
                .circuits()
                .getFirst()
                .loads()
                .getFirst()
                .dropPercent();
    }

    @Test
    void triesEverySizeForTheTrunk() {
        job.circuit("c").amps(18).kinds(DeviceKind.FUSE);

        Answer answer = whatIf().thinner(List.of());

        assertThat(answer.points())
                .extracting(Point::value)
                .startsWith("0.5 mm2", "0.75 mm2")
                .endsWith("16 mm2");
        assertThat(answer.points().getFirst().verdict()).isEqualTo(Verdict.FAIL);
        assertThat(answer.points())
                .filteredOn(point -> point.value().equals(answer.designed()))
                .singleElement()
                .extracting(Point::verdict)
                .isNotEqualTo(Verdict.FAIL);
    }

    @Test
    void triesOtherKindsOfTheSameRatingOrTheNext() {
        job.circuit("c").amps(5).kinds(DeviceKind.FUSE);

        Answer answer = whatIf().otherKind(List.of());

        assertThat(answer.designed()).isEqualTo("fuse");
        assertThat(answer.points())
                .extracting(point -> point.says().english())
                .containsExactly("fuse 7.5 A", "manual-reset 7.5 A", "auto-reset 10 A");
    }

    /** A standing caution is not told again for each value: what changes with the value is. */
    @Test
    void tellsWhatComesNextAndWhatHasBecomeWorse() {
        job.circuit("c").amps(5).runM(1).maxDropPercent(3);

        Answer answer = whatIf().longer(List.of(1.0, 1.1, 20.0));

        assertThat(answer.points()).extracting(Point::worse).containsExactly(false, false, true);
        assertThat(answer.points())
                .extracting(point -> point.nearest().code())
                .containsOnly(CheckCode.VOLTAGE_DROP);
        assertThat(answer.points())
                .extracting(point -> point.nearest().verdict())
                .containsExactly(Verdict.PASS, Verdict.PASS, Verdict.FAIL);
    }
}
