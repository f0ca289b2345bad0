package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestJob.TestCircuit;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject.Scope;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.words.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;

/** Circuits that share one device: all their leads are chosen together. */
class SharedLeadsTest {

    /** By copper area; thicker wire is dearer, as it is. */
    private static final Map<Double, String> WIRE_PRICES =
            Map.of(
                    0.5, "0.22", 0.75, "0.25", 1.0, "0.31", 1.5, "0.44", 2.5, "0.71", 4.0, "1.15",
                    6.0, "1.70", 10.0, "2.90", 16.0, "4.60");

    private final TestJob job = new TestJob();

    /** Under 10 mm2 only the sizes named. */
    private static Stock stockOf(double... areasMm2) {
        TestStock stock = TestStock.usual();
        List<Wire> wires = new ArrayList<>();
        stock.without(
                part -> {
                    if (!(part instanceof Wire wire)) {
                        return false;
                    }
                    wires.add(wire);
                    return true;
                });
        for (Wire wire : wires) {
            double areaMm2 = wire.copperMm2();
            if (areaMm2 >= 10 || DoubleStream.of(areasMm2).anyMatch(named -> named == areaMm2)) {
                stock.with(wire, WIRE_PRICES.get(areaMm2));
            }
        }
        return stock.build();
    }

    /** A group of circuits and what there is to size it with. */
    private record Group(Stock stock, ResolvedJob resolved, List<String> places) {}

    static LongStream seeds() {
        return LongStream.range(0, 30);
    }

    /**
     * Two or three circuits behind one device: every device below the main one with every wire in
     * every place, judged one by one by the checks of the finished job.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void findsNothingCheaperAmongAllCombinations(long seed) {
        Group group = groupOf(seed);
        ResolvedJob resolved = group.resolved();
        Judged judged = new Judged(group.stock(), resolved);

        SizedJob chosen = Sizer.size(resolved);
        boolean passes = Judged.keepsAll(chosen);
        long chosenMicros = passes ? judged.costMicros(chosen) : Long.MAX_VALUE;

        Combinations all =
                new Combinations(
                        judged,
                        chosen,
                        group.places(),
                        resolved.circuits().getFirst().wires(),
                        chosenMicros);
        double mainA = chosen.feeds().getFirst().mainDevice().orElseThrow().ratingA();
        for (Device device : group.stock().listBlockDevices(DeviceKind.FUSE)) {
            // What carries more than its rating passes no check.
            if (device.ratingA() < mainA
                    && device.ratingA() >= chosen.circuits().getFirst().carriedA()) {
                all.judgeBehind(device);
            }
        }
        assertThat(all.leastMicros).isEqualTo(chosenMicros);
    }

    /** Every wire in every place, but for what costs more than the choice even by its leads. */
    private static final class Combinations {

        private final Judged judged;
        private final SizedJob chosen;
        private final List<Wire> wires;
        private final List<Lead> places = new ArrayList<>();
        private final long atMostMicros;

        /** Least cost of the leads from a place on, with one splice and the leads of coils. */
        private final long[] restMicros;

        private long leastMicros = Long.MAX_VALUE;

        Combinations(
                Judged judged,
                SizedJob chosen,
                List<String> places,
                List<Wire> wires,
                long atMostMicros) {
            this.judged = judged;
            this.chosen = chosen;
            this.wires = wires;
            this.atMostMicros = atMostMicros;
            this.restMicros = new long[places.size() + 1];
            long settledMicros =
                    judged.priceMicros(
                            judged.stock().listByPrice(Splice.class).getFirst().number());
            for (SizedCircuit circuit : chosen.circuits()) {
                for (Lead lead : circuit.leads()) {
                    if (places.contains(lead.id())) {
                        this.places.add(lead);
                    } else if (lead.role() == LeadRole.TRIGGER || lead.role() == LeadRole.GROUND) {
                        settledMicros += judged.costMicros(lead, lead.wire());
                    }
                }
            }
            assertThat(this.places).hasSameSizeAs(places);
            restMicros[places.size()] = settledMicros;
            for (int place = places.size() - 1; place >= 0; place--) {
                restMicros[place] = restMicros[place + 1] + leastMicros(this.places.get(place));
            }
        }

        private long leastMicros(Lead lead) {
            return wires.stream()
                    .filter(wire -> judged.fits(lead, wire))
                    .mapToLong(wire -> judged.costMicros(lead, wire))
                    .min()
                    .orElseThrow();
        }

        void judgeBehind(Device device) {
            KeptSizes kept = KeptSizes.of(chosen).withDevice("a", device);
            judge(kept, 0, judged.priceMicros(device.number()));
        }

        private void judge(KeptSizes kept, int place, long soFarMicros) {
            if (soFarMicros + restMicros[place] > atMostMicros) {
                return;
            }
            if (place == places.size()) {
                leastMicros = Math.min(leastMicros, judged.costIfKept(kept));
                return;
            }
            Lead lead = places.get(place);
            for (Wire wire : wires) {
                if (judged.fits(lead, wire)) {
                    judge(
                            kept.withWire(lead.id(), wire),
                            place + 1,
                            soFarMicros + judged.costMicros(lead, wire));
                }
            }
        }
    }

    /** Else there would be nothing to compare. */
    @Test
    void findsAChoiceForMostGroups() {
        assertThat(
                        seeds().filter(
                                        seed ->
                                                Judged.keepsAll(
                                                        Sizer.size(
                                                                new SharedLeadsTest()
                                                                        .groupOf(seed)
                                                                        .resolved())))
                                .count())
                .isGreaterThanOrEqualTo(25);
    }

    private Group groupOf(long seed) {
        Random random = new Random(seed);
        int borrowers = 1 + random.nextInt(2);
        boolean ownerHasRelay = random.nextBoolean();
        boolean ownerIsSpliced = borrowers == 1 && random.nextInt(3) == 0;
        double[] areasMm2 =
                borrowers == 2 || ownerIsSpliced
                        ? new double[] {0.75, 1.5, 4}
                        : new double[] {0.5, 1, 2.5, 6};
        Stock stock = stockOf(areasMm2);
        TestCircuit owner = circuit("a", random);
        List<String> places = new ArrayList<>(List.of("a/share", "a/out"));
        if (ownerHasRelay) {
            owner.relay(RelayUse.CONTROLLER);
            places.add("a/jumper");
        }
        if (random.nextInt(4) == 0) {
            owner.wired();
        }
        if (ownerIsSpliced) {
            owner.load(LoadKind.SOCKET, 0.5 + random.nextDouble(), 1, random.nextDouble());
            places.addAll(List.of("a/branch-1", "a/branch-2"));
        }
        for (String id : List.of("b", "c").subList(0, borrowers)) {
            circuit(id, random).relayOn("a");
            places.addAll(List.of(id + "/jumper", id + "/out"));
        }
        return new Group(stock, job.resolve(stock), places);
    }

    private TestCircuit circuit(String id, Random random) {
        return job.circuit(id)
                .kinds(DeviceKind.FUSE)
                .runM(0.3 + 3 * random.nextDouble())
                .maxDropPercent(2.4 + 2.2 * random.nextDouble())
                .load(LoadKind.SOCKET, 0.5 + 4 * random.nextDouble(), 1, 0.3);
    }

    /** A short at the far end of a borrower runs through the shared lead as well. */
    @Test
    void countsTheSharedLeadAmongThoseThatAShortOfEachCircuitHeats() {
        job.circuit("a").amps(4).ratingA(15);
        job.circuit("b").amps(4).relayOn("a");
        ResolvedJob resolved = job.resolve(TestStock.usual().build());
        KeptSizes kept = KeptSizes.of(Sizer.size(resolved));
        List<Wire> wires = resolved.circuits().getFirst().wires();
        for (String thick : List.of("a/out", "b/jumper", "b/out")) {
            kept = kept.withWire(thick, wires.get(4));
        }

        SizedJob judged = Sizer.judge(resolved, kept.withWire("a/share", wires.getFirst()));

        assertThat(judged.checks())
                .filteredOn(check -> check.code() == CheckCode.SHORT_CIRCUIT_WITHSTAND)
                .filteredOn(check -> check.subject().scope() == Scope.CIRCUIT)
                .hasSize(2)
                .allSatisfy(
                        check -> assertThat(check.says().english()).contains("a/share, 0.5 mm2"));
    }

    /**
     * 10 A ask for 15 A of a fuse, more than 0.5 mm2 carries; 8 m of 1 mm2 lose 6.2 % at 5 A, of 6.
     */
    @Test
    void saysWhatTheNextCheaperSharedLeadAndTheNextCheaperWireFail() {
        Stock stock = stockOf(0.5, 1, 2.5, 6);
        job.circuit("a").amps(5);
        job.circuit("b").amps(5).runM(8).maxDropPercent(6).relayOn("a");

        List<SizedCircuit> circuits = Sizer.size(job.resolve(stock)).circuits();

        assertThat(circuits.get(0).why())
                .singleElement()
                .extracting(Text::english, STRING)
                .contains(
                        "The next cheaper shared lead fails overload-protection: 0.5 mm2 carries");
        assertThat(circuits.get(1).why())
                .singleElement()
                .extracting(Text::english, STRING)
                .startsWith("Circuit a's device feeds the relay contact. The next cheaper wire")
                .contains(" fails voltage-drop: 1.0 mm2 would lose ");
    }
}
