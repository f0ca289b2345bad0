package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestStock;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.LeadEnd.At;
import org.fusewright.core.sizing.LeadEnd.AtSplice;
import org.fusewright.core.sizing.LeadEnd.InCavity;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/**
 * A load's drop added up again from the answer alone: from the load back to the battery lead by
 * lead as the ends say, with every terminal, device, relay contact, splice, main device and holder
 * on the way, and then on to ground.
 */
class DropAlongTheWayTest {

    private static final Stock STOCK = TestStock.usual().build();

    static LongStream seeds() {
        return LongStream.range(1000, 1300);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void addsUpFromTheLeadsAndContacts(long seed) {
        SizedJob sized = Sizer.size(SizerLimitsTest.randomJob(seed).resolve(STOCK));

        for (SizedCircuit circuit : sized.circuits()) {
            for (SizedLoad load : circuit.loads()) {
                At atLoad = new At("load " + load.title());
                double dropV = wayOutV(sized, circuit, atLoad) + wayBackV(circuit, atLoad);

                assertThat(dropV)
                        .as("%s of circuit %s", load.title(), circuit.id())
                        .isCloseTo(load.dropV(), within(1e-9));
            }
        }
    }

    private static double wayOutV(SizedJob sized, SizedCircuit circuit, At atLoad) {
        Lead lead = arriving(circuit.leads(), atLoad).orElseThrow();
        double dropV = lead.dropV();
        while (!lead.from().equals(new At("battery"))) {
            Lead next = before(sized, lead);
            dropV += contactV(sized, next, lead) + next.dropV();
            lead = next;
        }
        return dropV;
    }

    /** The lead that brings what this one takes on. */
    private static Lead before(SizedJob sized, Lead lead) {
        List<Lead> all =
                Stream.concat(
                                sized.feeds().stream().flatMap(f -> f.leads().stream()),
                                sized.circuits().stream().flatMap(c -> c.leads().stream()))
                        .toList();
        LeadEnd source =
                switch (lead.from()) {
                    case InCavity(String id, CavityRole role) ->
                            new InCavity(
                                    id,
                                    role == CavityRole.LOAD
                                            ? CavityRole.FEED
                                            : CavityRole.RELAY_30);
                    case AtSplice splice -> splice;
                    case At at -> at;
                };
        return arriving(all, source).orElseThrow();
    }

    private static Optional<Lead> arriving(List<Lead> leads, LeadEnd end) {
        return leads.stream().filter(lead -> lead.to().equals(end)).findFirst();
    }

    /** What lies between two leads. */
    private static double contactV(SizedJob sized, Lead into, Lead outOf) {
        return switch (outOf.from()) {
            case InCavity(String id, CavityRole role) -> {
                SizedCircuit circuit = circuit(sized, id);
                double inside =
                        role == CavityRole.LOAD
                                ? circuit.device().orElseThrow().milliohm() * circuit.carriedA()
                                : circuit.resolved().relay().orElseThrow().contactMilliohm()
                                        * circuit.runningA();
                yield (inside + terminalMilliV(into) + terminalMilliV(outOf)) / 1000;
            }
            case AtSplice(String id) -> spliceMilliohm(sized, id) * into.currentA() / 1000;
            case At at -> {
                SizedFeed feed =
                        sized.feeds().stream()
                                .filter(f -> at.place().equals("main device " + f.id()))
                                .findFirst()
                                .orElseThrow();
                yield (feed.mainDevice().orElseThrow().milliohm()
                                + feed.holder().orElseThrow().contactMilliohm())
                        * feed.runningA()
                        / 1000;
            }
        };
    }

    private static double wayBackV(SizedCircuit circuit, At atLoad) {
        double dropV = 0;
        Optional<Lead> lead = leaving(circuit, atLoad);
        while (lead.isPresent()) {
            dropV += lead.get().dropV();
            if (!(lead.get().to() instanceof AtSplice splice)) {
                return dropV;
            }
            lead = leaving(circuit, splice);
            double milliohm =
                    circuit.splices().stream()
                            .filter(s -> s.id().equals(splice.splice()))
                            .findFirst()
                            .orElseThrow()
                            .part()
                            .milliohm();
            dropV += milliohm * lead.orElseThrow().currentA() / 1000;
        }
        return dropV;
    }

    private static Optional<Lead> leaving(SizedCircuit circuit, LeadEnd end) {
        return circuit.leads().stream().filter(lead -> lead.from().equals(end)).findFirst();
    }

    private static SizedCircuit circuit(SizedJob sized, String id) {
        return sized.circuits().stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
    }

    private static double terminalMilliV(Lead lead) {
        return STOCK.findTerminal(TestStock.FAMILY, lead.wire())
                        .filter(t -> STOCK.findSeal(TestStock.FAMILY, lead.wire()).isPresent())
                        .map(t -> t.contactMilliohm())
                        .orElse(0.0)
                * lead.currentA();
    }

    private static double spliceMilliohm(SizedJob sized, String id) {
        return Stream.concat(
                        sized.feeds().stream().flatMap(f -> f.splices().stream()),
                        sized.circuits().stream().flatMap(c -> c.splices().stream()))
                .filter(splice -> splice.id().equals(id))
                .findFirst()
                .orElseThrow()
                .part()
                .milliohm();
    }
}
