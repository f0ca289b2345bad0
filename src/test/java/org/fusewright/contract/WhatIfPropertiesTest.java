package org.fusewright.contract;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Job;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.core.sizing.WhatIf;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Point;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;

/** What must hold when something differs from what any design was made for. */
class WhatIfPropertiesTest {

    private static final KitPlanner PLANNER =
            KitPlanner.of(CatalogFolder.read(Path.of("catalog-sample")).catalog());

    /** Checks that the blocks and the shelves decide; a design that differs is not asked those. */
    private static final Set<CheckCode> NOT_OF_SIZING =
            EnumSet.of(
                    CheckCode.CAP_CLEARANCE,
                    CheckCode.BLOCK_CURRENT,
                    CheckCode.STOCKED,
                    CheckCode.PLACE_KEPT);

    static LongStream seeds() {
        return LongStream.range(0, 25);
    }

    private static Job job(long seed) {
        return JobReader.read(JobGenerator.generate(seed)).getJob();
    }

    /** Hot copper lets less current into a short, which devices and wires stand more easily. */
    private static final Set<CheckCode> GAIN_BY_HEAT =
            EnumSet.of(CheckCode.SHORT_CIRCUIT_WITHSTAND, CheckCode.INTERRUPTING_CAPACITY);

    /** So does a long lead; and on a long run a splice finds its place. */
    private static final Set<CheckCode> GAIN_BY_LENGTH =
            EnumSet.of(
                    CheckCode.SHORT_CIRCUIT_WITHSTAND,
                    CheckCode.INTERRUPTING_CAPACITY,
                    CheckCode.SPLICE_PLACEMENT);

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverGetsABetterVerdictWhereItIsHotter(long seed) {
        Job job = job(seed);
        for (Circuit circuit : job.circuits()) {
            WhatIf whatIf = PLANNER.whatIf(job, circuit.id());
            Set<CheckCode> mayGain = EnumSet.copyOf(GAIN_BY_HEAT);
            if (isThermal(whatIf)) {
                // It opens the earlier, the hotter it is.
                mayGain.add(CheckCode.OVERLOAD_PROTECTION);
            }

            assertNeverBetter(whatIf.hotter(List.of()), mayGain);
        }
    }

    private static boolean isThermal(WhatIf whatIf) {
        return whatIf.otherKind(List.of()).designed().equals(DeviceKind.MANUAL_RESET.code());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverGetsABetterVerdictOnALongerRun(long seed) {
        Job job = job(seed);
        for (Circuit circuit : job.circuits()) {
            Answer answer = PLANNER.whatIf(job, circuit.id()).longer(List.of());

            assertNeverBetter(answer, GAIN_BY_LENGTH);
        }
    }

    private static void assertNeverBetter(Answer answer, Set<CheckCode> mayGain) {
        Map<String, Verdict> before = Map.of();
        for (Point point : answer.points()) {
            Map<String, Verdict> now = verdicts(point, mayGain);
            assertThat(worst(now)).as(answer.circuit()).isGreaterThanOrEqualTo(worst(before));
            before.forEach(
                    (check, verdict) ->
                            assertThat(now.getOrDefault(check, Verdict.PASS))
                                    .as("%s, %s", answer.circuit(), check)
                                    .satisfiesAnyOf(
                                            later ->
                                                    assertThat(later)
                                                            .isGreaterThanOrEqualTo(verdict),
                                            later -> assertSaysLittle(check, now)));
            before = now;
        }
    }

    /**
     * How hot a conductor runs is estimated for what it may carry (AC 43.13-1B 11-68). Beyond that
     * something fails anyway, and the drop says little.
     */
    private static void assertSaysLittle(String check, Map<String, Verdict> beside) {
        assertThat(check).startsWith(CheckCode.VOLTAGE_DROP.name());
        assertThat(worst(beside)).isEqualTo(Verdict.FAIL);
    }

    private static Verdict worst(Map<String, Verdict> verdicts) {
        return verdicts.values().stream().max(Comparator.naturalOrder()).orElse(Verdict.PASS);
    }

    /** What does not pass, but for some checks. */
    private static Map<String, Verdict> verdicts(Point point, Set<CheckCode> leftOut) {
        return point.notPassed().stream()
                .filter(check -> !leftOut.contains(check.code()))
                .collect(
                        Collectors.toMap(
                                check -> check.code() + " of " + check.subject().text().english(),
                                Check::verdict));
    }

    /** Up to there nothing is worse; one step beyond something is. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void findsWhereAVerdictGetsWorse(long seed) {
        Job job = job(seed);
        for (Circuit circuit : job.circuits()) {
            WhatIf whatIf = PLANNER.whatIf(job, circuit.id());
            assertTurnsAt(whatIf, whatIf.longer(List.of()), 0.01);
            assertTurnsAt(whatIf, whatIf.hotter(List.of()), 0.5);
        }
    }

    private static void assertTurnsAt(WhatIf whatIf, Answer answer, double step) {
        double designed = Double.parseDouble(answer.designed());
        double unchangedTo = answer.unchangedTo().orElseThrow();
        double standsTo = answer.standsTo().orElseThrow();
        assertThat(unchangedTo).isBetween(designed, standsTo);
        Point own = at(whatIf, answer, designed);
        assertThat(becomes(at(whatIf, answer, unchangedTo), Verdict.CAUTION, own)).isFalse();
        assertThat(becomes(at(whatIf, answer, standsTo), Verdict.FAIL, own)).isFalse();
        if (unchangedTo + step <= answer.varied().most()) {
            Point beyond = at(whatIf, answer, unchangedTo + step);
            assertThat(becomes(beyond, Verdict.CAUTION, own)).as(answer.circuit()).isTrue();
        }
        if (standsTo + step <= answer.varied().most()) {
            Point beyond = at(whatIf, answer, standsTo + step);
            assertThat(becomes(beyond, Verdict.FAIL, own)).as(answer.circuit()).isTrue();
        }
    }

    /** Whether any check has become that bad, and worse than it was. */
    private static boolean becomes(Point point, Verdict bad, Point own) {
        Map<String, Verdict> before = verdicts(own, Set.of());
        return verdicts(point, Set.of()).entrySet().stream()
                .anyMatch(
                        check ->
                                check.getValue().compareTo(bad) >= 0
                                        && check.getValue()
                                                        .compareTo(
                                                                before.getOrDefault(
                                                                        check.getKey(),
                                                                        Verdict.PASS))
                                                > 0);
    }

    private static Point at(WhatIf whatIf, Answer answer, double value) {
        return (answer.varied() == WhatIf.Varied.RUN
                        ? whatIf.longer(List.of(value))
                        : whatIf.hotter(List.of(value)))
                .points()
                .getFirst();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void repeatsTheVerdictsOfTheKitWhereNothingDiffers(long seed) {
        Job job = job(seed);
        Kit kit = PLANNER.plan(job);
        for (Circuit circuit : job.circuits()) {
            WhatIf whatIf = PLANNER.whatIf(job, circuit.id());
            for (Answer answer :
                    List.of(
                            whatIf.hotter(List.of()),
                            whatIf.longer(List.of()),
                            whatIf.thinner(List.of()),
                            whatIf.otherKind(List.of()))) {
                assertThat(answer.points())
                        .as("%s %s", circuit.id(), answer.varied())
                        .filteredOn(point -> point.value().equals(answer.designed()))
                        .singleElement()
                        .satisfies(
                                point ->
                                        assertThat(point.notPassed())
                                                .containsExactlyInAnyOrderElementsOf(
                                                        listNotPassed(kit, circuit)));
            }
        }
    }

    private static List<Check> listNotPassed(Kit kit, Circuit circuit) {
        String deviceOwner = circuit.contactFrom().orElse(circuit.id());
        return kit.checks().stream()
                .filter(check -> check.verdict() != Verdict.PASS)
                .filter(check -> !NOT_OF_SIZING.contains(check.code()))
                .filter(
                        check ->
                                switch (check.subject().scope()) {
                                    case CIRCUIT ->
                                            check.subject().id().equals(circuit.id())
                                                    || check.subject().id().equals(deviceOwner);
                                    case FEED -> check.subject().id().equals(circuit.feed());
                                    case JOB, BLOCK -> false;
                                })
                .toList();
    }
}
