package org.fusewright.core.quote;

import static org.assertj.core.api.Assertions.assertThat;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.fusewright.contract.JobGenerator;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.BlockPlace;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.jobs.load.JobReader;
import org.joda.money.Money;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Whole quotes of the sample jobs. */
class QuotingTest {
    /**
     * Counted on the drawing of the quad: one block of four positions with two breakers and a relay
     * fills all eight cavities; two feeds, each with a main device in its holder; the two work
     * lamps meet in a splice. Two leads a feed, before and behind the main device, the pump's
     * jumper, way out, return, trigger and ground, and of the lamps the way out and two branches:
     * twelve. Three kits.
     */
    @ParameterizedTest
    @CsvSource({
        "cut, 12, 1.2",
        "crimp, 8, 1",
        "load, 8, 0.4",
        "device, 3, 0.3",
        "block, 1, 4",
        "splice, 1, 3.5",
        "holder, 2, 5",
        "test, 2, 2",
        "pack, 1, 12",
    })
    void countsBenchWorkFromTheKit(String code, int times, BigDecimal minutes) {
        Variant variant = SampleQuotes.quad(3, VariantKind.AS_ASKED).variants().getFirst();
        QuoteLine line = PlainKits.line(variant, "labour", code);
        assertThat(line.quantity())
                .isEqualByComparingTo(minutes.multiply(BigDecimal.valueOf(3L * times)));
        assertThat(line.detail()).isEqualTo(3 * times + " × " + minutes + " min");
    }

    /** Two circuits need both cavities of two positions; the smallest block has three. */
    @Test
    void countsPlugsWhereCavitiesStayEmpty() {
        Quote quote =
                SampleQuotes.of(
                        1,
                        SampleQuotes.job("07-too-much-on-one"),
                        SampleQuotes.wishes(5, VariantKind.AS_ASKED));
        assertThat(PlainKits.line(quote.variants().getFirst(), "labour", "plug").detail())
                .isEqualTo("10 × 0.2 min");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "01-trail-quad",
                "02-carburetted-single",
                "03-injected-twin",
                "04-utility-quad-24v",
                "05-oldtimer-6v",
                "06-touring-twelve",
                "07-too-much-on-one"
            })
    void sumsItsLinesAndNeedsItsKits(String file) {
        Quote quote =
                SampleQuotes.of(
                        1,
                        SampleQuotes.job(file),
                        SampleQuotes.wishes(
                                3, VariantKind.AS_ASKED, VariantKind.FUSES, VariantKind.CHEAPEST));
        Kit kit = KitPlanner.of(SampleQuotes.book().catalog()).plan(SampleQuotes.job(file));
        for (Variant variant : quote.variants()) {
            Money net = Money.zero(quote.currency());
            for (QuoteLine line : variant.lines()) {
                net = net.plus(line.price());
            }
            assertThat(variant.net()).isEqualTo(net);
            assertThat(variant.total()).isEqualTo(net.plus(variant.tax()));
            assertThat(variant.gaps()).isEmpty();
            assertThat(variant.cost().isLessThan(variant.net())).isTrue();
        }
        Variant asked = quote.findVariant(VariantKind.AS_ASKED).orElseThrow();
        kit.parts()
                .forEach(
                        part ->
                                assertThat(asked.demand().get(part.part().number()))
                                        .isGreaterThanOrEqualTo(
                                                part.quantity().multiply(new BigDecimal(3))));
        assertThat(asked.demand()).hasSize((int) distinctParts(kit));
    }

    private static long distinctParts(Kit kit) {
        return kit.parts().stream().map(part -> part.part().number()).distinct().count();
    }

    /** A variant once forgot where the job has a device sit. */
    @Test
    void keepsWhereADeviceSitsInEveryVariant() {
        BlockPlace place =
                new BlockPlace("B1", Optional.empty(), OptionalInt.of(2), /* fixed= */ true);
        Job quad = SampleQuotes.job("01-trail-quad");
        Job placed =
                quad.withCircuits(
                        quad.circuits().stream()
                                .map(circuit -> circuit.withPlace(Optional.of(place)))
                                .toList());
        assertThat(VariantKind.withDevices(placed, DeviceKind.FUSE).circuits())
                .hasSameSizeAs(placed.circuits())
                .allSatisfy(circuit -> assertThat(circuit.place()).contains(place))
                .allSatisfy(
                        circuit -> assertThat(circuit.devices()).containsExactly(DeviceKind.FUSE));
    }

    @Test
    void putsAFuseOnEveryCircuitOfTheFusesVariant() {
        Quote quote = SampleQuotes.quad(1, VariantKind.FUSES, VariantKind.SOLID_STATE);
        assertThat(quote.findVariant(VariantKind.FUSES).orElseThrow().protections())
                .hasSize(2)
                .allSatisfy(one -> assertThat(one.device()).startsWith("fuse "));
        assertThat(quote.findVariant(VariantKind.SOLID_STATE).orElseThrow().protections())
                .hasSize(2)
                .allSatisfy(one -> assertThat(one.device()).startsWith("auto-reset "));
        assertThat(DeviceDifference.listIn(quote))
                .extracting(DeviceDifference::circuit)
                .containsExactly("pump", "lamps");
    }

    @Test
    void listsNoDifferenceBetweenAVariantAndItself() {
        assertThat(DeviceDifference.listIn(SampleQuotes.quad(1, VariantKind.FUSES))).isEmpty();
    }

    /** All kinds on all circuits, tried out: nothing beats what the search has found. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "01-trail-quad",
                "02-carburetted-single",
                "03-injected-twin",
                "05-oldtimer-6v",
                "07-too-much-on-one"
            })
    void findsTheCheapestThatPassesAmongAllChoicesOfKinds(String file) {
        Job job = SampleQuotes.job(file);
        PriceBook book = SampleQuotes.book();
        KitPlanner planner = KitPlanner.of(book.catalog());
        Pricing pricing = new Pricing(book, job.currency(), 1, PlainKits.tax("20"), true);
        List<Rank> ranks = new ArrayList<>();
        collect(job, 0, planner, pricing, ranks);
        Rank best = ranks.stream().min(Rank.BEST_FIRST).orElseThrow();
        CheapestDesign.Found found =
                CheapestDesign.find(job, planner.plan(job), planner::plan, pricing);
        assertThat(Rank.of(found.kit(), pricing)).isEqualTo(best);
        assertThat(found.isProven()).isTrue();
    }

    /** Generated jobs of up to five devices, against all choices of kinds. */
    @Test
    void findsTheCheapestThatPassesOfGeneratedJobs() {
        PriceBook book = SampleQuotes.book();
        KitPlanner planner = KitPlanner.of(book.catalog());
        int jobs = 0;
        int proven = 0;
        for (long seed = 0; jobs < 40; seed++) {
            Job job =
                    JobReader.read(JobGenerator.generate(seed).toString().getBytes(UTF_8)).getJob();
            if (job.circuits().isEmpty() || job.circuits().size() > 5) {
                continue;
            }
            Optional<Kit> asked = plan(planner, job);
            if (asked.isEmpty()) {
                continue;
            }
            Pricing pricing =
                    new Pricing(
                            book, job.currency(), 1 + (int) seed % 3, PlainKits.tax("20"), true);
            List<Rank> ranks = new ArrayList<>();
            collect(job, 0, planner, pricing, ranks);
            ranks.add(Rank.of(asked.get(), pricing));
            Rank best = ranks.stream().min(Rank.BEST_FIRST).orElseThrow();
            CheapestDesign.Found found =
                    CheapestDesign.find(job, asked.get(), planner::plan, pricing);
            if (found.isProven()) {
                proven++;
                assertThat(Rank.of(found.kit(), pricing))
                        .describedAs("seed " + seed)
                        .isEqualTo(best);
            }
            jobs++;
        }
        assertThat(proven).isGreaterThan(35);
    }

    private record Rank(long fails, long cautions, Money price) {
        private static final Comparator<Rank> BEST_FIRST =
                Comparator.comparingLong(Rank::fails)
                        .thenComparingLong(Rank::cautions)
                        .thenComparing(Rank::price);

        static Rank of(Kit kit, Pricing pricing) {
            return new Rank(
                    count(kit, Verdict.FAIL), count(kit, Verdict.CAUTION), priced(kit, pricing));
        }

        private static Money priced(Kit kit, Pricing pricing) {
            return pricing.price(VariantKind.AS_ASKED, kit).total();
        }

        private static long count(Kit kit, Verdict verdict) {
            return kit.checks().stream().filter(check -> check.verdict() == verdict).count();
        }
    }

    private static void collect(
            Job job, int circuit, KitPlanner planner, Pricing pricing, List<Rank> ranks) {
        if (circuit == job.circuits().size()) {
            plan(planner, job).ifPresent(kit -> ranks.add(Rank.of(kit, pricing)));
            return;
        }
        for (DeviceKind kind : DeviceKind.values()) {
            List<Circuit> circuits = new ArrayList<>(job.circuits());
            circuits.set(circuit, circuits.get(circuit).withDevices(List.of(kind)));
            collect(job.withCircuits(circuits), circuit + 1, planner, pricing, ranks);
        }
    }

    private static Optional<Kit> plan(KitPlanner planner, Job job) {
        try {
            return Optional.of(planner.plan(job));
        } catch (MalformedJobException nothingStocked) {
            return Optional.empty();
        }
    }
}
