package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.Location;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;
import org.junit.jupiter.api.Test;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Which leads a job has, drawn as "id: from > to, route"; each case adds one feature. */
class LeadTopologyTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    private SizedJob size() {
        return Sizer.size(job.resolve(STOCK));
    }

    private static List<Lead> leads(SizedJob sized) {
        return Stream.concat(
                        sized.feeds().stream().flatMap(f -> f.leads().stream()),
                        sized.circuits().stream().flatMap(c -> c.leads().stream()))
                .toList();
    }

    private static List<String> drawn(SizedJob sized) {
        return leads(sized).stream().map(LeadTopologyTest::draw).toList();
    }

    private static String draw(Lead lead) {
        return lead.id()
                + ": "
                + draw(lead.from())
                + " > "
                + draw(lead.to())
                + ", "
                + lead.role().code()
                + " "
                + lead.routeM();
    }

    private static String draw(LeadEnd end) {
        return switch (end) {
            case LeadEnd.InCavity cavity -> cavity.circuit() + "." + cavity.role().code();
            case LeadEnd.AtSplice splice -> "[" + splice.splice() + "]";
            case LeadEnd.At at -> at.place();
        };
    }

    private static List<String> splices(SizedJob sized) {
        return Stream.concat(
                        sized.feeds().stream().flatMap(f -> f.splices().stream()),
                        sized.circuits().stream().flatMap(c -> c.splices().stream()))
                .map(s -> s.id() + " x" + s.leads())
                .toList();
    }

    @Test
    void runsStraightForOneCircuitAndOneLoad() {
        job.circuit("c").amps(4);

        SizedJob sized = size();

        assertThat(drawn(sized))
                .containsExactly(
                        "battery/source: battery > main device battery, feed 0.15",
                        "battery/main: main device battery > c.feed, feed 0.6",
                        "c/out: c.load > load Load A, trunk 1.0");
        assertThat(splices(sized)).isEmpty();
    }

    @Test
    void givesAFeedThatServesNothingNoParts() {
        job.circuit("c").amps(4);

        SizedFeed idle = size().feeds().getLast();

        assertThat(idle.id()).isEqualTo("switched");
        assertThat(idle.mainDevice()).isEmpty();
        assertThat(idle.holder()).isEmpty();
        assertThat(idle.leads()).isEmpty();
        assertThat(idle.runningA()).isZero();
    }

    @Test
    void addsTheBranchToTheRunOfASingleLoad() {
        job.circuit("c").load(LoadKind.LED, 2, 1, 0.5);

        assertThat(drawn(size())).contains("c/out: c.load > load Load A, trunk 1.5");
    }

    @Test
    void splicesAFeedThatServesTwoCircuits() {
        job.circuit("a").amps(4);
        job.circuit("b").amps(2);

        SizedJob sized = size();

        assertThat(drawn(sized))
                .startsWith(
                        "battery/source: battery > main device battery, feed 0.15",
                        "battery/main: main device battery > [battery/splice-1], feed 0.6",
                        "battery/pigtail-1: [battery/splice-1] > a.feed, pigtail 0.15",
                        "battery/pigtail-2: [battery/splice-1] > b.feed, pigtail 0.15");
        assertThat(splices(sized)).containsExactly("battery/splice-1 x3");
    }

    @Test
    void reachesAnotherLocation() {
        job.locations.add(new Location("tail", 1.2));
        job.circuit("a").amps(4);
        job.circuit("b").amps(2).location = "tail";

        assertThat(drawn(size()))
                .contains(
                        "battery/pigtail-1: [battery/splice-1] > a.feed, pigtail 0.15",
                        "battery/pigtail-2: [battery/splice-1] > b.feed, pigtail " + (0.15 + 1.2));
    }

    @Test
    void chainsSplicesWhenNoPartTakesAllLeads() {
        for (int i = 1; i <= 8; i++) {
            job.circuit("c" + i).amps(1);
        }

        SizedJob sized = size();

        assertThat(splices(sized).size()).isGreaterThan(1);
        assertThat(drawn(sized))
                .contains("battery/link-1: [battery/splice-1] > [battery/splice-2], pigtail 0.15");
        assertEverySpliceHasItsLeads(sized);
    }

    @Test
    void splicesTheLoadsOfOneCircuitAndCountsEach() {
        job.circuit("c").load(LoadKind.LED, 1, 2, 0.3).load(LoadKind.LED, 1, 1, 0.4);

        SizedJob sized = size();

        assertThat(drawn(sized))
                .contains(
                        "c/out: c.load > [c/splice-1], trunk 1.0",
                        "c/branch-1: [c/splice-1] > load Load A 1, branch 0.3")
                .anyMatch(lead -> lead.startsWith("c/branch-2: [c/splice-"))
                .anyMatch(lead -> lead.endsWith("> load Load B, branch 0.4"));
        assertThat(sized.circuits().getFirst().loads())
                .extracting(SizedLoad::title)
                .containsExactly("Load A 1", "Load A 2", "Load B");
        assertEverySpliceHasItsLeads(sized);
    }

    @Test
    void returnsByWireAsLongAndAsThickAsTheWayOut() {
        job.circuit("c").amps(4).wired();

        SizedJob sized = size();
        Lead out = leads(sized).get(2);
        Lead back = leads(sized).get(3);

        assertThat(draw(back)).isEqualTo("c/return: load Load A > ground, return 1.0");
        assertThat(back.wire().size()).isEqualTo(out.wire().size());
        assertThat(back.wire().colour().code()).isEqualTo("BN");
        assertThat(back.cut()).isEqualTo(out.cut());
    }

    @Test
    void splicesTheWayBackToo() {
        job.circuit("c").load(LoadKind.LED, 1, 2, 0.3).wired();

        SizedJob sized = size();

        assertThat(drawn(sized))
                .contains(
                        "c/return: [c/return-splice-1] > ground, return 1.0",
                        "c/return-1: load Load A 1 > [c/return-splice-1], return 0.3",
                        "c/return-2: load Load A 2 > [c/return-splice-1], return 0.3");
        assertThat(splices(sized)).containsExactly("c/splice-1 x3", "c/return-splice-1 x3");
    }

    @Test
    void putsARelayBetweenDeviceAndLoad() {
        job.circuit("c").amps(4).relay(RelayUse.CONTROLLER);

        assertThat(drawn(size()))
                .endsWith(
                        "c/jumper: c.load > c.30, jumper 0.1",
                        "c/out: c.87 > load Load A, trunk 1.0",
                        "c/trigger: controller > c.86, trigger 0.8",
                        "c/ground: c.85 > ground, ground 0.3");
    }

    @Test
    void takesATriggerFromTheSpliceOfItsFeed() {
        job.circuit("c").amps(4).relay("switched");
        job.circuit("d").feed("switched").amps(2);

        SizedJob sized = size();

        assertThat(drawn(sized))
                .contains(
                        "switched/main: main device switched > [switched/splice-1], feed 0.9",
                        "switched/pigtail-1: [switched/splice-1] > d.feed, pigtail 0.15",
                        "c/trigger: [switched/splice-1] > c.86, trigger 0.8");
        // The coil hangs on the feed: 14.2 V on 100 ohms.
        assertThat(sized.feeds().getLast().runningA()).isEqualTo(2 + 0.142);
        // The main device's rating protects it; a coil cannot overload it, so it may be thinner.
        double mainA = sized.feeds().getLast().mainDevice().orElseThrow().ratingA();
        assertThat(mainA)
                .isLessThanOrEqualTo(
                        Ampacity.tabledA(
                                lead(sized, "c/trigger").wire().copperMm2(), new Celsius(125)));
    }

    /** A trigger that is all a feed has runs from the main device to the relay in one piece. */
    @Test
    void runsALoneTriggerStraight() {
        job.circuit("c").amps(4).relay("switched");

        assertThat(drawn(size()))
                .contains(
                        "switched/source: battery > main device switched, feed 0.15",
                        "c/trigger: main device switched > c.86, trigger " + (0.9 + 0.8))
                .noneMatch(lead -> lead.startsWith("switched/main"));
    }

    private static Lead lead(SizedJob sized, String id) {
        return leads(sized).stream().filter(l -> l.id().equals(id)).findFirst().orElseThrow();
    }

    @Test
    void sharesADeviceWithARelayByASplice() {
        job.circuit("x").amps(4).relay(RelayUse.CONTROLLER);
        job.circuit("y").amps(3).relayOn("x");

        SizedJob sized = size();

        assertThat(drawn(sized))
                .contains(
                        "x/share: x.load > [x/share-1], jumper 0.15",
                        "x/jumper: [x/share-1] > x.30, jumper 0.15",
                        "y/jumper: [x/share-1] > y.30, jumper 0.15",
                        "x/out: x.87 > load Load A, trunk 1.0",
                        "y/out: y.87 > load Load A, trunk 1.0")
                .noneMatch(lead -> lead.contains("y.feed") || lead.contains("y.load"));
        assertThat(splices(sized)).containsExactly("x/share-1 x3");
    }

    @Test
    void sharesADeviceOfACircuitWithoutARelay() {
        job.circuit("x").amps(4);
        job.circuit("y").amps(3).relayOn("x");

        assertThat(drawn(size()))
                .contains(
                        "x/share: x.load > [x/share-1], jumper 0.15",
                        "x/out: [x/share-1] > load Load A, trunk 1.0",
                        "y/jumper: [x/share-1] > y.30, jumper 0.15");
    }

    @Test
    void chainsASharedDeviceOverManyBorrowers() {
        job.circuit("x").amps(1);
        for (int i = 1; i <= 7; i++) {
            job.circuit("y" + i).amps(1).relayOn("x");
        }

        SizedJob sized = size();

        assertThat(drawn(sized)).anyMatch(l -> l.startsWith("x/share-link-1: [x/share-1] > [x/s"));
        assertEverySpliceHasItsLeads(sized);
    }

    @Test
    void namesLoadsOfOneTitleApart() {
        job.circuit("c")
                .load(LoadKind.LED, 1, 1, 0)
                .load(job.circuit("other").amps(1).loads().getFirst())
                .load(job.circuit("another").amps(1).loads().getFirst());

        assertThat(size().circuits().getFirst().loads())
                .extracting(SizedLoad::title)
                .doesNotHaveDuplicates();
    }

    /** One wire per cavity (common practice), each lead once, and splices as full as they say. */
    @Test
    void keepsOneWirePerCavityInARichJob() {
        job.feeds.add(new Feed("third", Feed.SWITCHED, 0.4, 0.1));
        job.circuit("a").load(LoadKind.LED, 1, 7, 0.3).wired();
        job.circuit("b").amps(6).relay("switched");
        job.circuit("c").amps(3).relayOn("b");
        job.circuit("d").amps(3).relayOn("b").relay =
                Optional.of(new RelayUse("third", 0.5, 0.5, Optional.of("b"), Optional.empty()));
        job.circuit("e").feed("switched").amps(2).relay("switched");
        job.circuit("f").amps(2).relay("third");

        SizedJob sized = size();

        assertThat(leads(sized)).extracting(Lead::id).doesNotHaveDuplicates();
        assertEverySpliceHasItsLeads(sized);
        List<LeadEnd> cavities = new ArrayList<>();
        for (Lead lead : leads(sized)) {
            Stream.of(lead.from(), lead.to())
                    .filter(LeadEnd.InCavity.class::isInstance)
                    .forEach(cavities::add);
        }
        assertThat(cavities).doesNotHaveDuplicates();
        // Two for each of four devices, four for each of five relays.
        assertThat(cavities).hasSize(4 * 2 + 5 * 4);
    }

    private static void assertEverySpliceHasItsLeads(SizedJob sized) {
        List<SizedSplice> splices =
                Stream.concat(
                                sized.feeds().stream().flatMap(f -> f.splices().stream()),
                                sized.circuits().stream().flatMap(c -> c.splices().stream()))
                        .toList();
        Set<String> ids = new HashSet<>();
        for (SizedSplice splice : splices) {
            assertThat(ids.add(splice.id())).isTrue();
            List<Lead> meeting =
                    leads(sized).stream()
                            .filter(
                                    lead ->
                                            Stream.of(lead.from(), lead.to())
                                                    .anyMatch(
                                                            new LeadEnd.AtSplice(splice.id())
                                                                    ::equals))
                            .toList();
            assertThat(meeting).as(splice.id()).hasSize(splice.leads());
            assertThat(splice.leads()).isBetween(3, splice.part().maxLeads());
            double areaMm2 = meeting.stream().mapToDouble(l -> l.wire().copperMm2()).sum();
            assertThat(areaMm2)
                    .as(splice.id())
                    .isBetween(splice.part().minAreaMm2(), splice.part().maxAreaMm2());
        }
    }
}
