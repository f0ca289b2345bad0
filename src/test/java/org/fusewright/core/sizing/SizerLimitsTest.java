package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestJob.TestCircuit;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.Supply;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Amperes;
import org.fusewright.core.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/** What must hold for any job: seeded, so that a failing one can be run alone by its seed. */
class SizerLimitsTest {

    private static final Stock STOCK = TestStock.usual().build();
    private static final List<String> SIZES =
            List.of("0.5 mm2", "0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2");
    private static final double[] RATINGS = {2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30};

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    private static double between(Random random, double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    private static SizedJob size(TestJob job) {
        return Sizer.size(job.resolve(STOCK));
    }

    private static double worstDropV(SizedCircuit circuit) {
        return circuit.loads().stream().mapToDouble(SizedLoad::dropV).max().orElseThrow();
    }

    /** One circuit with everything that a property changes given as a number. */
    private static SizedCircuit one(
            long seed, double runM, double ambientC, double ratingA, String size) {
        Random random = new Random(seed);
        TestJob job = new TestJob();
        job.ambientC = ambientC;
        job.bundledLeads = 1 + random.nextInt(10);
        TestCircuit circuit =
                job.circuit("c")
                        .load(
                                LoadKind.values()[random.nextInt(8)],
                                between(random, 0.2, 9),
                                1 + random.nextInt(3),
                                between(random, 0, 0.6))
                        .runM(runM)
                        .maxDropPercent(90)
                        .ratingA(ratingA);
        if (random.nextBoolean()) {
            circuit.wired();
        }
        if (!size.isEmpty()) {
            circuit.gauge(size);
        }
        return size(job).circuits().getFirst();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverLosesLessOnALongerRun(long seed) {
        Random random = new Random(seed);
        double runM = between(random, 0.2, 4);
        String size = SIZES.get(random.nextInt(SIZES.size()));

        SizedCircuit shorter = one(seed, runM, 40, 20, size);
        SizedCircuit longer = one(seed, runM * between(random, 1.01, 2), 40, 20, size);

        assertThat(worstDropV(longer)).isGreaterThan(worstDropV(shorter));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverLosesMoreOnAThickerWire(long seed) {
        Random random = new Random(seed);
        int thin = random.nextInt(SIZES.size() - 1);
        double amps = between(random, 0.5, 20);
        double runM = between(random, 0.2, 4);

        assertThat(dropOnV(SIZES.get(thin + 1), amps, runM))
                .isLessThan(dropOnV(SIZES.get(thin), amps, runM));
    }

    private static double dropOnV(String size, double amps, double runM) {
        TestJob job = new TestJob();
        job.circuit("c").amps(amps).runM(runM).gauge(size).ratingA(30).maxDropPercent(90);
        return worstDropV(size(job).circuits().getFirst());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverCarriesMoreInAHotterRoomOrALargerBundle(long seed) {
        Random random = new Random(seed);
        double areaMm2 = between(random, 0.2, 60);
        Celsius classTemperature = new Celsius(between(random, 60, 200));
        double coolC = between(random, -20, 120);
        Celsius cool = new Celsius(coolC);
        Celsius hot = new Celsius(coolC + between(random, 0.1, 60));
        int few = 1 + random.nextInt(20);
        int many = few + random.nextInt(20);

        double base =
                Ampacity.allowedA(areaMm2, classTemperature, new Surroundings(cool, cool, few));

        assertThat(Ampacity.allowedA(areaMm2, classTemperature, new Surroundings(hot, hot, few)))
                .isLessThanOrEqualTo(base);
        assertThat(Ampacity.allowedA(areaMm2, classTemperature, new Surroundings(cool, cool, many)))
                .isLessThanOrEqualTo(base);
        assertThat(
                        Ampacity.allowedA(
                                areaMm2 * 1.3, classTemperature, new Surroundings(cool, cool, few)))
                .isGreaterThanOrEqualTo(base);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverTakesAThinnerWireInAHotterRoom(long seed) {
        Random random = new Random(seed);
        double coolC = between(random, 20, 70);
        double ratingA = RATINGS[random.nextInt(7)];
        double hotC = coolC + between(random, 1, 30);

        double coolMm2 = thinnestMm2(one(seed, 1, coolC, ratingA, ""));
        double hotMm2 = thinnestMm2(one(seed, 1, hotC, ratingA, ""));

        assertThat(hotMm2).isGreaterThanOrEqualTo(coolMm2);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverProtectsAThinnerWireByABiggerDevice(long seed) {
        double before = 0;
        for (double ratingA : RATINGS) {
            double areaMm2 = thinnestMm2(one(seed, 1, 40, ratingA, ""));
            assertThat(areaMm2).as("%s A", ratingA).isGreaterThanOrEqualTo(before);
            before = areaMm2;
        }
    }

    private static double thinnestMm2(SizedCircuit circuit) {
        return circuit.leads().stream()
                .mapToDouble(lead -> lead.wire().copperMm2())
                .min()
                .orElseThrow();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverRunsCoolerAtMoreCurrent(long seed) {
        Random random = new Random(seed);
        Celsius ambient = new Celsius(between(random, -10, 130));
        Celsius classTemperature = new Celsius(between(random, 60, 200));
        Amperes allowed = new Amperes(between(random, 0, 60));
        double currentA = between(random, 0, 60);

        double less =
                ConductorTemperature.estimate(
                                ambient, classTemperature, new Amperes(currentA), allowed)
                        .value();
        double more =
                ConductorTemperature.estimate(
                                ambient, classTemperature, new Amperes(currentA * 1.2), allowed)
                        .value();

        assertThat(more).isGreaterThanOrEqualTo(less);
        assertThat(less).isGreaterThanOrEqualTo(ambient.value());
    }

    /** Up to twelve circuits of every sort, some of which share the device of an earlier one. */
    static TestJob randomJob(long seed) {
        Random random = new Random(seed);
        TestJob job = new TestJob();
        job.ambientC = between(random, 10, 70);
        job.blockAmbientC = between(random, 20, 90);
        job.bundledLeads = 1 + random.nextInt(12);
        double nominalV = random.nextInt(4) == 0 ? 24 : 12;
        job.supply =
                new Supply(
                        nominalV,
                        nominalV * 1.02,
                        nominalV * 1.18,
                        between(random, 5, 40),
                        random.nextBoolean()
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(between(random, 5, 60)));
        int circuits = random.nextInt(13);
        for (int i = 0; i < circuits; i++) {
            TestCircuit circuit =
                    job.circuit("c" + i)
                            .feed(
                                    i == 0 || random.nextBoolean()
                                            ? TestJob.BATTERY
                                            : TestJob.SWITCHED)
                            .runM(between(random, 0.1, 4))
                            .maxDropPercent(random.nextInt(3) == 0 ? 3 : 10)
                            .kinds(
                                    DeviceKind.values()[random.nextInt(3)],
                                    DeviceKind.values()[random.nextInt(3)]);
            int loads = 1 + random.nextInt(3);
            for (int j = 0; j < loads; j++) {
                circuit.load(
                        LoadKind.values()[random.nextInt(8)],
                        between(random, 0.1, random.nextInt(8) == 0 ? 40 : 6),
                        1 + random.nextInt(random.nextInt(4) == 0 ? 6 : 1),
                        between(random, 0, 1));
            }
            if (random.nextBoolean()) {
                circuit.wired();
            }
            if (random.nextInt(3) == 0) {
                circuit.relay(random.nextBoolean() ? "controller" : TestJob.SWITCHED);
            } else if (i > 0 && random.nextInt(6) == 0) {
                circuit.feed(TestJob.BATTERY).relayOn("c0");
            }
            if (random.nextInt(6) == 0) {
                circuit.ratingA(RATINGS[random.nextInt(RATINGS.length)]).kinds(DeviceKind.FUSE);
            }
            if (random.nextInt(6) == 0) {
                circuit.gauge(SIZES.get(random.nextInt(SIZES.size())));
            }
        }
        return job;
    }

    /** Every job gets an answer, twice the same, and its verdicts can be told from its leads. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void answersEveryJobAndStandsByItsVerdicts(long seed) {
        TestJob job = randomJob(seed);

        SizedJob sized = size(job);

        assertThat(size(randomJob(seed))).isEqualTo(sized);
        assertThat(sized.checks())
                .extracting(check -> check.code() + " " + check.subject().text().english())
                .doesNotHaveDuplicates();
        for (SizedCircuit circuit : sized.circuits()) {
            double deviceA =
                    circuit.device()
                            .or(() -> sized.circuits().getFirst().device())
                            .orElseThrow()
                            .ratingA();
            double weakestA =
                    circuit.leads().stream()
                            .filter(
                                    l ->
                                            l.role() != LeadRole.TRIGGER
                                                    && l.role() != LeadRole.GROUND)
                            .mapToDouble(
                                    l ->
                                            Ampacity.allowedA(
                                                    l.wire().copperMm2(),
                                                    new Celsius(l.wire().classC()),
                                                    job.build().surroundings()))
                            .min()
                            .orElseThrow();
            Verdict overload = verdict(sized, CheckCode.OVERLOAD_PROTECTION, circuit.id());
            assertThat(overload == Verdict.PASS).isEqualTo(deviceA <= weakestA);
            double leadsV =
                    circuit.leads().stream()
                            .filter(l -> l.role() == LeadRole.TRUNK)
                            .mapToDouble(Lead::dropV)
                            .sum();
            for (SizedLoad load : circuit.loads()) {
                assertThat(load.dropV()).isGreaterThan(leadsV);
                assertThat(load.dropPercent())
                        .isEqualTo(100 * load.dropV() / job.supply.nominalV());
            }
        }
    }

    /**
     * Behind a shared splice the trunk is chosen before the splice is: whatever the limit, the
     * answer keeps it as long as the thickest wire can.
     */
    @Test
    void keepsTheDropBehindASharedSpliceWheneverItCan() {
        // From 4 % on the feed's own limit stays at 2 %, so only the trunk moves.
        for (double may = 4; may < 12; may += 0.002) {
            assertThat(sharedDropPercent(may)).isLessThanOrEqualTo(may);
        }
    }

    private static double sharedDropPercent(double mayLosePercent) {
        TestJob job = new TestJob();
        job.circuit("x").amps(6).runM(4).maxDropPercent(mayLosePercent);
        job.circuit("y").amps(5).relayOn("x");
        return size(job).circuits().getFirst().loads().getFirst().dropPercent();
    }

    /** A splice has the leads that it says, and copper in its range unless its check objects. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void holdsTheCopperOfEverySplice(long seed) {
        SizedJob sized = size(randomJob(seed));
        List<Lead> leads =
                Stream.concat(
                                sized.feeds().stream().flatMap(f -> f.leads().stream()),
                                sized.circuits().stream().flatMap(c -> c.leads().stream()))
                        .toList();

        for (SizedFeed feed : sized.feeds()) {
            assertSplices(sized, "feed " + feed.id(), feed.splices(), leads);
        }
        for (SizedCircuit circuit : sized.circuits()) {
            assertSplices(sized, "circuit " + circuit.id(), circuit.splices(), leads);
        }
    }

    private static void assertSplices(
            SizedJob sized, String owner, List<SizedSplice> splices, List<Lead> leads) {
        boolean allFit = true;
        for (SizedSplice splice : splices) {
            LeadEnd here = new LeadEnd.AtSplice(splice.id());
            List<Lead> meeting =
                    leads.stream()
                            .filter(lead -> lead.from().equals(here) || lead.to().equals(here))
                            .toList();
            assertThat(meeting).as(splice.id()).hasSize(splice.leads());
            assertThat(splice.leads()).isBetween(3, splice.part().maxLeads());
            double areaMm2 = meeting.stream().mapToDouble(l -> l.wire().copperMm2()).sum();
            allFit &= splice.part().minAreaMm2() <= areaMm2 + 1e-9;
            allFit &= areaMm2 <= splice.part().maxAreaMm2() + 1e-9;
        }
        String subject = owner + ", splice parts";
        boolean objects =
                sized.checks().stream()
                        .anyMatch(
                                c ->
                                        c.subject().text().english().equals(subject)
                                                && c.verdict() == Verdict.FAIL);
        assertThat(objects).as(subject).isEqualTo(!allFit);
    }

    private static Verdict verdict(SizedJob sized, CheckCode code, String circuit) {
        return sized.checks().stream()
                .filter(c -> c.code() == code)
                .filter(c -> c.subject().text().english().equals("circuit " + circuit))
                .map(Check::verdict)
                .findFirst()
                .orElseThrow();
    }
}
