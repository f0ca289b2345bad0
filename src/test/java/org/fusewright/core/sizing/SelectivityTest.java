package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Arrays;
import java.util.Random;

/** Gates of ISO 8820-3, those of mini fuses from memory; breakers from memory and invented. */
class SelectivityTest {

    private static final Celsius ROOM = new Celsius(20);
    private static final Subject FEED = Subject.feed("battery");

    private static Selectivity.Branch branch(
            String circuit, Device device, double restA, double prospectiveA) {
        return new Selectivity.Branch(
                circuit, device, TimeCurrentBand.of(device, ROOM), restA, prospectiveA);
    }

    private static Selectivity of(Device main, Device branch, double restA, double prospectiveA) {
        return Selectivity.of(
                TimeCurrentBand.of(main, ROOM), branch("c", branch, restA, prospectiveA));
    }

    private static Device main(double ratingA) {
        return TestStock.mainFuse(BladeForm.HIGH_CURRENT, ratingA);
    }

    private static Device fuse(double ratingA, String gates) {
        return TestStock.device(
                "D",
                DeviceKind.FUSE,
                BladeForm.MINI,
                ratingA,
                TestStock.gates(gates),
                Rerating.NONE);
    }

    /** At any current a 40 A main outlasts a 10 A mini fuse: 2,304 against 360 A2s in the end. */
    @ParameterizedTest(name = "{0} A of other loads")
    @CsvSource({"0", "10", "20"})
    void holdsToTheProspectiveShort(double restA) {
        Selectivity selectivity = of(main(40), TestStock.fuse(10), restA, 900);

        assertThat(selectivity.isFull()).isTrue();
        assertThat(selectivity.holdsToA()).isEqualTo(900);
    }

    /**
     * By hand, no other load: a main held for 10 s at 100 A and 1 s at 1,000 A, so 10 (I/100)^-1; a
     * branch that takes 1 s at 10 A and up to 0.5 s at 10,000 A, so (I/10)^-0.1003. They meet where
     * 1000/I = (I/10)^-0.1003.
     */
    @Test
    void findsWhereTwoLinesMeet() {
        Device main = fuse(100, "100:10:inf 1000:1:inf 10000:0.1:inf");
        Device branch = fuse(10, "100:0:1 100000:0:0.5");
        double slope = Math.log(2) / Math.log(1000);
        double meetA = Math.exp((Math.log(1000) - slope * Math.log(10)) / (1 - slope));

        Selectivity selectivity = of(main, branch, 0, 5_000);

        assertThat(selectivity.holdsToA()).isCloseTo(meetA, Percentage.withPercentage(1e-3));
        assertThat(selectivity.isFull()).isFalse();
        assertThat(selectivity.isLostInOverload()).isFalse();
    }

    /** 300 A of other loads bring the main's 10 (I/100)^-1 to 1000/(I + 300). */
    @Test
    void addsTheOtherLoads() {
        Device main = fuse(100, "100:10:inf 1000:1:inf 10000:0.1:inf");
        Device branch = fuse(10, "100:0:1.5 100000:0:1.4999999");

        assertThat(of(main, branch, 0, 5_000).holdsToA()).isCloseTo(666.67, within(0.01));
        assertThat(of(main, branch, 300, 5_000).holdsToA()).isCloseTo(366.67, within(0.01));
    }

    /**
     * 25 A on 30 A with 4 A beside: 33.75 A may take 600 s, the main may open at 37.75 A sooner.
     */
    @Test
    void knowsWhenItIsLostInAnOverload() {
        Device main = TestStock.fuse(30);
        Selectivity selectivity = of(main, TestStock.fuse(25), 4, 400);
        TimeCurrentBand band = TimeCurrentBand.of(main, ROOM);

        assertThat(selectivity.isLostInOverload()).isTrue();
        assertThat(selectivity.holdsToA()).isLessThan(33.75);
        assertThat(band.earliestS(selectivity.holdsToA() + 4))
                .isCloseTo(600, Percentage.withPercentage(0.1));
    }

    @Test
    void holdsNothingWhenTheOtherLoadsAloneMayOpenTheMain() {
        assertThat(of(TestStock.fuse(10), TestStock.fuse(5), 20, 400).holdsToA()).isZero();
    }

    /** A branch device that never surely opens leaves it to the main to hold on its own. */
    @Test
    void comparesWithAMainThatHoldsWhenTheBranchNeverSurelyOpens() {
        Device open = fuse(10, "100:3600:inf");

        assertThat(of(main(40), open, 5, 900).holdsToA()).isCloseTo(35, within(0.001));
    }

    /** An electronic main may open at once beyond its last gate: 1000 % of 30 A. */
    @Test
    void seesAMainThatMayOpenAtOnce() {
        Selectivity selectivity = of(TestStock.autoReset(30), TestStock.fuse(2), 10, 900);

        assertThat(selectivity.holdsToA()).isLessThanOrEqualTo(290);
        assertThat(selectivity.holdsToA())
                .isCloseTo(
                        denseHoldsToA(TestStock.autoReset(30), TestStock.fuse(2), 10, 900),
                        Percentage.withPercentage(0.02));
    }

    /** Against a walk in steps of 0.01 %, over seeded pairs of devices of every kind. */
    @Test
    void agreesWithADenseWalk() {
        Random random = new Random(40);
        int lost = 0;
        for (int i = 0; i < 1_500; i++) {
            Device main = anyDevice(random, 10 + 60 * random.nextDouble());
            Device branch = anyDevice(random, 2 + 25 * random.nextDouble());
            double restA = random.nextInt(3) == 0 ? 0 : main.ratingA() * random.nextDouble();
            double prospectiveA = 40 + 900 * random.nextDouble();

            double holdsToA = of(main, branch, restA, prospectiveA).holdsToA();
            double denseA = denseHoldsToA(main, branch, restA, prospectiveA);

            assertThat(holdsToA)
                    .as("%s over %s, rest %s", main, branch, restA)
                    .isCloseTo(denseA, within(1e-6 + 2e-4 * denseA));
            lost += holdsToA < prospectiveA ? 1 : 0;
        }
        assertThat(lost).isBetween(300, 1_200);
    }

    private static Device anyDevice(Random random, double ratingA) {
        return switch (random.nextInt(4)) {
            case 0 -> TestStock.fuse(ratingA);
            case 1 -> TestStock.manualReset(ratingA);
            case 2 -> TestStock.autoReset(ratingA);
            default -> main(ratingA);
        };
    }

    private static double denseHoldsToA(
            Device main, Device branch, double restA, double prospectiveA) {
        TimeCurrentBand mainBand = TimeCurrentBand.of(main, ROOM);
        TimeCurrentBand branchBand = TimeCurrentBand.of(branch, ROOM);
        double firstA = branchBand.surelyOpensA();
        double lastA = 0;
        for (double faultA = 0.01; ; faultA *= 1.0001) {
            double hereA = Math.min(faultA, prospectiveA);
            double mainS = mainBand.earliestS(hereA + restA);
            boolean stays =
                    Double.isInfinite(mainS) || mainS > branchBand.latestS(Math.max(hereA, firstA));
            if (!stays) {
                return lastA;
            }
            lastA = hereA;
            if (hereA == prospectiveA) {
                return prospectiveA;
            }
        }
    }

    /** A bigger main of the same kind never holds less, more load beside it never more. */
    @Test
    void holdsMoreWithABiggerMainAndLessWithMoreBesideIt() {
        Random random = new Random(41);
        for (int i = 0; i < 2_000; i++) {
            double ratingA = 10 + 60 * random.nextDouble();
            Device branch = anyDevice(random, 2 + 25 * random.nextDouble());
            double restA = ratingA * random.nextDouble();
            double prospectiveA = 40 + 900 * random.nextDouble();
            double hereA = of(main(ratingA), branch, restA, prospectiveA).holdsToA();

            assertThat(of(main(ratingA * 1.3), branch, restA, prospectiveA).holdsToA())
                    .isGreaterThanOrEqualTo(hereA * (1 - 1e-5));
            assertThat(of(main(ratingA), branch, restA * 1.3, prospectiveA).holdsToA())
                    .isLessThanOrEqualTo(hereA * (1 + 1e-5));
        }
    }

    private static Check check(Device main, Selectivity.Branch... branches) {
        return MainDeviceRules.selectivity(
                FEED, main, TimeCurrentBand.of(main, ROOM), Arrays.asList(branches));
    }

    @Test
    void passesWhenOnlyTheBranchOpens() {
        Check check = check(main(40), branch("horn", TestStock.fuse(10), 12, 387));

        assertThat(check.verdict()).isEqualTo(Verdict.PASS);
        assertThat(check.value()).isEqualTo(387);
        assertThat(check.limit()).isEqualTo(387);
        assertThat(check.unit()).isEqualTo("A");
        assertThat(check.says().english())
                .isEqualTo(
                        "horn, 10 A behind 40 A: only the branch opens, up to the 387 A of a short"
                                + " right behind it.");
    }

    /** By hand: beyond 600 % of 15 A the main holds 90 x 90 x 0.04 = 324 A2s, the branch 360. */
    @Test
    void asksAPersonWhenAHardShortMayOpenBoth() {
        Check check =
                check(
                        TestStock.mainFuse(BladeForm.MEDIUM, 15),
                        branch("horn", TestStock.fuse(5), 2, 300),
                        branch("lamps", TestStock.fuse(10), 2, 300));

        assertThat(check.verdict()).isEqualTo(Verdict.CAUTION);
        assertThat(check.value()).isBetween(20.0, 90.0);
        assertThat(check.limit()).isEqualTo(300);
        assertThat(check.margin()).isNegative();
        assertThat(check.says().english())
                .startsWith("lamps, 10 A behind 15 A: only the branch opens up to ")
                .endsWith(
                        " A; in a harder short the main device may open too, and the whole feed"
                                + " goes dark.");
    }

    @Test
    void asksAPersonWhenAnOverloadMayOpenBoth() {
        Check check = check(TestStock.fuse(30), branch("lamps", TestStock.fuse(25), 4, 400));

        assertThat(check.verdict()).isEqualTo(Verdict.CAUTION);
        assertThat(check.says().english())
                .startsWith("lamps, 25 A behind 30 A: in an overload of more than ")
                .endsWith(" A the main device may open too, and the whole feed goes dark.");
    }

    /** Even where a weak battery cannot make either of them open. */
    @ParameterizedTest(name = "{0} A behind 30 A, a short of {1} A")
    @CsvSource({"30, 400", "40, 400", "30, 20"})
    void failsWhenTheMainIsNotLarger(double branchA, double prospectiveA) {
        Check check =
                check(
                        main(30),
                        branch("horn", TestStock.fuse(25), 4, prospectiveA),
                        branch("pump", main(branchA), 0, prospectiveA));

        assertThat(check.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(check.value()).isZero();
        assertThat(check.says().english())
                .endsWith("A behind 30 A: the main device opens with the branch, or before it.")
                .startsWith("pump, ");
    }
}
