package org.fusewright.core.order;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.order.Cover.CoverLine;
import org.fusewright.core.pricing.LinePrice;
import org.fusewright.core.pricing.PriceList;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.Collectors;

class CoverPlannerTest {

    /** What is bought of each offer, as "supplier x pack: quantity", worked by hand. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                // 73 x 0.50 = 36.50, 100 x 0.30 = 30.00
                "buys 100 for less than 73   | 73  | N A pack 1 1=0.50 100=0.30 in 1 | - | N: 100 |"
                        + " 30.00",
                "keeps to 50 when 100 cost more | 50 | N A pack 1 1=0.50 100=0.30 in 1 | - | N: 50"
                        + " | 25.00",
                // 100 x 0.30 + 30 x 0.40 = 42.00; 200 x 0.30 = 60.00; 130 x 0.40 = 52.00
                "mixes packs of two suppliers | 130 | N A pack 100 1=0.30 in 1 | M A pack 1 1=0.40"
                        + " in 1 | M: 30, N: 100 | 42.00",
                // 2 x 5 at 1.00 are cheaper than 5 and 2 at 2.60, or 7 at 2.60
                "rounds up to whole packs     | 7   | N A pack 5 1=1.00 in 1 | M A pack 1 1=2.60 in"
                        + " 1 | N: 10 | 10.00",
            })
    void buysAtLeastCost(
            String name, int need, String first, String second, String bought, String total) {
        String[] offers = second.equals("-") ? new String[] {first} : new String[] {first, second};
        Cover cover = CoverPlanner.plan(Tasks.task(Map.of("A", need), Map.of(), offers));
        assertThat(words(cover)).isEqualTo(bought);
        assertThat(cover.total().getAmount()).isEqualByComparingTo(total);
        assertThat(cover.isOptimal()).isTrue();
    }

    private static String words(Cover cover) {
        return cover.lines().stream()
                .map(line -> line.offer().supplier() + ": " + line.quantity())
                .collect(Collectors.joining(", "));
    }

    /** 10 of A at 1.00 from N, whose orders start at 25.00, or at 1.60 from M. */
    @ParameterizedTest(name = "a minimum of {0} makes {1} for {2}")
    @CsvSource({"10.00, N, 10.00", "15.00, N, 15.00", "17.00, M, 16.00", "25.00, M, 16.00"})
    void fillsAnOrderUpOrGoesElsewhere(String minimum, String supplier, String total) {
        Cover cover =
                CoverPlanner.plan(
                        Tasks.task(
                                Map.of("A", 10),
                                Map.of("N", minimum),
                                "N A pack 1 1=1.00 in 1",
                                "M A pack 1 1=1.60 in 1"));
        assertThat(cover.total().getAmount()).isEqualByComparingTo(total);
        assertThat(cover.shares())
                .extracting(Cover.SupplierShare::supplier)
                .containsExactly(supplier);
        assertThat(cover.isOptimal()).isTrue();
    }

    /** Apart, A costs 8.00 at N and B 9.00 at M; N sells neither for less than 20.00 in all. */
    @Test
    void letsOnePartGoToAnotherSupplierSoThatAnOrderReachesItsMinimum() {
        Cover cover =
                CoverPlanner.plan(
                        Tasks.task(
                                Map.of("A", 10, "B", 10),
                                Map.of("N", "18.00"),
                                "N A pack 1 1=0.80 in 1",
                                "M A pack 1 1=1.40 in 1",
                                "N B pack 1 1=1.00 in 1",
                                "M B pack 1 1=0.90 in 1"));
        // Both at N: 18.00. A at N filled up to 18.00 and B at M: 27.00. Both at M: 23.00.
        assertThat(words(cover)).isEqualTo("N: 10, N: 10");
        assertThat(cover.total().getAmount()).isEqualByComparingTo("18.00");
        assertThat(cover.isOptimal()).isTrue();
    }

    /** 73 cost 8 packs of 10 at 0.45 of M, or 36.50 of N. 100 of N at 0.30 cost less. */
    @Test
    void tellsWhatItSavesAgainstTheNaiveOrder() {
        Cover cover =
                CoverPlanner.plan(
                        Tasks.task(
                                Map.of("A", 73),
                                Map.of(),
                                "N A pack 1 1=0.50 100=0.30 in 1",
                                "M A pack 10 1=0.45 in 1"));
        assertThat(cover.naive().orElseThrow().getAmount()).isEqualByComparingTo("36.00");
        assertThat(cover.saving().getAmount()).isEqualByComparingTo("6.00");
    }

    @Test
    void saysWhichOffersAreTooSlowOrInAnotherCurrency() {
        CoverTask soon =
                new CoverTask(
                        CurrencyUnit.EUR,
                        List.of(
                                new Need(Tasks.offer("N A pack 1 1=1 in 1").part(), 3),
                                new Need(Tasks.offer("N B pack 1 1=1 in 1").part(), 3),
                                new Need(Tasks.offer("N C pack 1 1=1 in 1").part(), 3)),
                        List.of(
                                Tasks.offer("N A pack 1 1=1.00 in 9"),
                                Tasks.offer("M A pack 1 1=2.00 in 5"),
                                Tasks.offer("N B pack 1 1=1.00 in 9")),
                        Map.of(),
                        OptionalInt.of(5));
        Cover cover = CoverPlanner.plan(soon);
        assertThat(words(cover)).isEqualTo("M: 3");
        assertThat(cover.leftAside())
                .extracting(one -> one.reason().english())
                .containsExactly("too slow: takes 9 days", "too slow: takes 9 days");
        assertThat(cover.uncovered())
                .extracting(one -> one.reason().english())
                .containsExactly(
                        "the quickest offer takes 9 days; there are 5", "nobody offers it");
    }

    /**
     * Every quantity of every offer is tried, and every combination of what the parts then cost.
     */
    @Test
    void costsWhatTheBestOfAllWaysCosts() {
        int minimumsThatMatter = 0;
        for (long seed = 0; seed < 300; seed++) {
            CoverTask task = Tasks.small(seed);
            Cover cover = CoverPlanner.plan(task);
            OptionalLong cheapest = EveryWay.cheapest(task);
            assertThat(cheapest).describedAs("seed " + seed).isPresent();
            assertThat(cover.total().getAmountMinorLong())
                    .describedAs("seed " + seed)
                    .isEqualTo(cheapest.getAsLong());
            assertThat(cover.isOptimal()).describedAs("seed " + seed).isTrue();
            assertThat(cover.saving().isNegative()).describedAs("seed " + seed).isFalse();
            assertThat(sumOf(cover)).isEqualTo(cover.total().getAmountMinorLong());
            CoverTask free =
                    new CoverTask(
                            task.currency(),
                            task.needs(),
                            task.offers(),
                            Map.of(),
                            OptionalInt.empty());
            if (CoverPlanner.plan(free).total().isLessThan(cover.total())) {
                minimumsThatMatter++;
            }
        }
        assertThat(minimumsThatMatter).isGreaterThan(50);
    }

    /**
     * Draws in which several minimum orders bind at once, judged by an independent solver (OR-Tools
     * CP-SAT). What is called proven must be the least; what is not proven must tell a bound that
     * holds.
     */
    @Test
    void costsWhatAnIndependentSolverFindsWhereManyMinimumsBind() {
        int[][] sizes = {{6, 3}, {8, 6}, {14, 3}, {16, 5}, {24, 4}, {36, 6}};
        int draws = 0;
        int proven = 0;
        int bindTogether = 0;
        for (int[] size : sizes) {
            for (double tightness : new double[] {0.7, 1, 1.6}) {
                for (long seed = 1; seed <= 2; seed++) {
                    CoverTask task = Tasks.hard(seed, size[0], size[1], tightness);
                    Cover cover = CoverPlanner.plan(task);
                    long total = cover.total().getAmountMinorLong();
                    CoverJudge.Verdict verdict = CoverJudge.judge(task, total, 6);
                    String drawn =
                            "seed %d, %d parts, %d suppliers, %s"
                                    .formatted(seed, size[0], size[1], tightness);
                    assertThat(verdict.bound()).describedAs(drawn).isLessThanOrEqualTo(total);
                    assertThat(verdict.cost())
                            .describedAs(drawn)
                            .isGreaterThanOrEqualTo(cover.bound().getAmountMinorLong());
                    assertThat(sumOf(cover)).describedAs(drawn).isEqualTo(total);
                    assertThat(cover.gap().getAmountMinorLong())
                            .describedAs(drawn)
                            .isLessThanOrEqualTo(total / 1_000);
                    draws++;
                    proven += cover.isOptimal() ? 1 : 0;
                    bindTogether += countBinding(cover) > 1 ? 1 : 0;
                }
            }
        }
        assertThat(proven).isEqualTo(draws);
        assertThat(bindTogether).isGreaterThan(draws / 3);
    }

    /** The minimum orders of all eight suppliers together cost about what all parts cost. */
    @ParameterizedTest(name = "draw {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void provesLargeOrdersInWhichManyMinimumsBind(long seed) {
        Cover cover = CoverPlanner.plan(Tasks.hard(seed, 500, 8, 1));
        assertThat(cover.gap().getAmountMinorLong()).isZero();
        assertThat(sumOf(cover)).isEqualTo(cover.total().getAmountMinorLong());
        assertThat(cover.uncovered()).isEmpty();
        assertThat(cover.shares())
                .allSatisfy(
                        share ->
                                assertThat(share.value())
                                        .isGreaterThanOrEqualTo(share.minimum().orElseThrow()));
    }

    @Test
    void plansTheSameTaskAlike() {
        assertThat(CoverPlanner.plan(Tasks.hard(3, 60, 6, 1)))
                .isEqualTo(CoverPlanner.plan(Tasks.hard(3, 60, 6, 1)));
    }

    /** Orders that are worth hardly more than their minimum. */
    private static long countBinding(Cover cover) {
        return cover.shares().stream()
                .filter(share -> share.minimum().isPresent())
                .filter(
                        share ->
                                share.value().getAmountMinorLong()
                                        < 1.01 * share.minimum().get().getAmountMinorLong())
                .count();
    }

    /** Sums of whole packs meet a minimum to the cent where they can. */
    @Test
    void fillsAnOrderUpToTheCentWithSeveralParts() {
        // 10.00 of A are needed; 7 of B at 0.37 and 12 of C at 0.20 make the missing 4.99
        Cover cover =
                CoverPlanner.plan(
                        Tasks.task(
                                Map.of("A", 10, "B", 1, "C", 1),
                                Map.of("N", "15.56"),
                                "N A pack 1 1=1.00 in 1",
                                "N B pack 1 1=0.37 in 1",
                                "N C pack 1 1=0.20 in 1"));
        assertThat(cover.total().getAmount()).isEqualByComparingTo("15.56");
        assertThat(cover.isOptimal()).isTrue();
    }

    private static long sumOf(Cover cover) {
        long sum = 0;
        for (CoverLine line : cover.lines()) {
            sum +=
                    PriceList.extend(
                                    line.offer().unitPriceAt(line.quantity()),
                                    BigDecimal.valueOf(line.quantity()))
                            .getAmountMinorLong();
        }
        return sum;
    }

    @Test
    void extendsAsThePriceListDoes() {
        Random random = new Random(7);
        for (CurrencyUnit currency :
                List.of(CurrencyUnit.EUR, CurrencyUnit.of("JPY"), CurrencyUnit.of("KWD"))) {
            for (int i = 0; i < 2_000; i++) {
                BigMoney price =
                        BigMoney.of(
                                currency,
                                BigDecimal.valueOf(random.nextInt(2_000_000), random.nextInt(7)));
                int quantity = 1 + random.nextInt(5_000);
                assertThat(LinePrice.of(price).extend(quantity))
                        .isEqualTo(
                                PriceList.extend(price, BigDecimal.valueOf(quantity))
                                        .getAmountMinorLong());
            }
        }
    }
}
