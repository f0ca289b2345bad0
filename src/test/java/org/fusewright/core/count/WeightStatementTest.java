package org.fusewright.core.count;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.Weighing.Outcome;
import org.fusewright.core.count.Weighing.Reading;
import org.fusewright.core.count.WeightStatement.OnScale;
import org.fusewright.core.words.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;

class WeightStatementTest {

    private static final List<ExpectedLine> SMALL_PARTS =
            List.of(
                    Bench.line("TERMINAL", CountedKind.TERMINAL, 4, 0.55),
                    Bench.line("SEAL", CountedKind.SEAL, 4, 0.15),
                    Bench.line("FUSE", CountedKind.FUSE, 2, 0.78));

    private static final List<ExpectedLine> BAG =
            List.of(
                    Bench.line("BLOCK", CountedKind.BLOCK, 1, 26.8),
                    Bench.line("CAP", CountedKind.CAP, 1, 12.4),
                    Bench.line("TERMINAL", CountedKind.TERMINAL, 8, 0.55),
                    Bench.line("SEAL", CountedKind.SEAL, 8, 0.15),
                    Bench.line("PLUG", CountedKind.PLUG, 2, 0.21),
                    Bench.line("FUSE", CountedKind.FUSE, 6, 0.78),
                    Bench.line("RELAY", CountedKind.RELAY, 1, 18.4),
                    Bench.leads("WIRE", 1200L, 800L, 800L));

    @Test
    void seesASealOnAFineScale() {
        WeightStatement statement = WeightStatement.of(SMALL_PARTS, WeighingTerms.usual(0.01));
        assertThat(statement.all().lightest().part()).hasToString("SEAL");
        assertThat(statement.all().visible()).isTrue();
        assertThat(statement.byHand()).isEmpty();
        assertThat(statement.sentences().get(2).english())
                .startsWith("This scale sees it when it is missing: it must show 4.29 to 4.43 g.");
    }

    @Test
    void saysThatACoarseScaleDoesNotSeeASeal() {
        WeightStatement statement = WeightStatement.of(BAG, WeighingTerms.usual(0.1));
        assertThat(statement.all().visible()).isFalse();
        assertThat(statement.all().chanceOfMiss()).isGreaterThan(0.3);
        assertThat(statement.byHand()).isNotEmpty();
        assertThat(statement.rest().orElseThrow().chanceOfError()).isLessThanOrEqualTo(0.01);
        assertThat(statement.sentences())
                .extracting(Text::english)
                .anySatisfy(
                        sentence ->
                                assertThat(sentence)
                                        .contains(
                                                "does not see it: a bag without it would pass in"))
                .anySatisfy(sentence -> assertThat(sentence).startsWith("Count by hand and leave"));
    }

    @Test
    void asksToCountEverythingOnAKitchenScale() {
        List<ExpectedLine> seals = List.of(Bench.line("SEAL", CountedKind.SEAL, 8, 0.15));
        WeightStatement statement = WeightStatement.of(seals, WeighingTerms.usual(1));
        assertThat(statement.byHand()).isEqualTo(seals);
        assertThat(statement.rest()).isEmpty();
        assertThat(Text.sentences(statement.sentences()).english())
                .contains("count everything by hand");
    }

    @Test
    void doesNotTrustAPartWithoutMass() {
        List<ExpectedLine> lines = new ArrayList<>(SMALL_PARTS);
        lines.add(Bench.line("UNKNOWN", CountedKind.CAP, 1, 0));
        WeightStatement statement = WeightStatement.of(lines, WeighingTerms.usual(0.01));
        assertThat(statement.all().visible()).isFalse();
        assertThat(statement.byHand())
                .extracting(ExpectedLine::part)
                .asString()
                .contains("UNKNOWN");
    }

    /** Every choice of lines tried: none keeps more of them on the scale. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.05, 0.1, 0.2, 0.5, 1, 2})
    void leavesNoMoreLinesToTheHandThanItMust(double resolutionG) {
        Random random = new Random(7);
        for (int round = 0; round < 30; round++) {
            List<ExpectedLine> lines = new ArrayList<>();
            for (int i = 0; i < 9; i++) {
                CountedKind kind = CountedKind.values()[random.nextInt(13)];
                double eachG = Math.exp(random.nextDouble() * 6 - 2);
                lines.add(Bench.line("P" + i, kind, 1 + random.nextInt(9), eachG));
            }
            WeighingTerms terms = WeighingTerms.usual(resolutionG);
            WeightStatement statement = WeightStatement.of(lines, terms);
            if (statement.all().visible()) {
                assertThat(statement.byHand()).isEmpty();
                continue;
            }
            int kept = statement.rest().map(onScale -> onScale.lines().size()).orElse(0);
            assertThat(kept).isEqualTo(mostByTrying(lines, terms));
            statement.rest().ifPresent(onScale -> assertThat(onScale.visible()).isTrue());
            assertThat(statement.byHand()).hasSize(lines.size() - kept);
        }
    }

    private static int mostByTrying(List<ExpectedLine> lines, WeighingTerms terms) {
        int most = 0;
        for (int choice = 1; choice < 1 << lines.size(); choice++) {
            List<ExpectedLine> chosen = new ArrayList<>();
            for (int i = 0; i < lines.size(); i++) {
                if ((choice >> i & 1) == 1) {
                    chosen.add(lines.get(i));
                }
            }
            if (chosen.size() > most && isSeenWhereverTheStepsLie(chosen, terms)) {
                most = chosen.size();
            }
        }
        return most;
    }

    private static boolean isSeenWhereverTheStepsLie(
            List<ExpectedLine> lines, WeighingTerms terms) {
        ExpectedLine lightest =
                lines.stream()
                        .min(Comparator.comparingDouble(line -> line.masses().lightestG()))
                        .orElseThrow();
        double lightestG = lightest.masses().lightestG();
        return terms.massOf(lines, lightest, lightestG).chanceOff(lightestG / 2)
                <= terms.errorProbability();
    }

    /**
     * Bags filled piece by piece, each part's pieces about a mean that was itself found from ten of
     * them, weighed empty and full on a scale that rounds. Complete bags must be called too light,
     * and bags without one lightest piece be passed, as often as the statement says.
     */
    @ParameterizedTest
    @CsvSource({
        "0.01, 2, 0.01",
        "0.01, 8, 0.2",
        "0.02, 2, 0.05",
        "0.05, 2, 0.2",
        "0.1, 2, 0.4",
        "0.1, 8, 0.4",
        "0.05, 40, 0.4",
    })
    void isWrongAsOftenAsItSays(double resolutionG, int terminals, double errorProbability) {
        List<ExpectedLine> lines =
                List.of(
                        Bench.line("TERMINAL", CountedKind.TERMINAL, terminals, 0.55),
                        Bench.line("SEAL", CountedKind.SEAL, 6, 0.15),
                        Bench.line("FUSE", CountedKind.FUSE, 2, 0.78));
        WeighingTerms terms = new WeighingTerms(resolutionG, 10, errorProbability, Map.of());
        OnScale onScale = WeightStatement.of(lines, terms).all();
        Random random = new Random(56);
        int runs = 100_000;
        int tooLight = 0;
        int tooHeavy = 0;
        int passedShort = 0;
        int passedOver = 0;
        double lowG = onScale.lowestG() - resolutionG / 2;
        double highG = onScale.highestG() + resolutionG / 2;
        for (int run = 0; run < runs; run++) {
            double completeG = shownG(lines, 0, terms, random);
            tooLight += completeG < lowG ? 1 : 0;
            tooHeavy += completeG > highG ? 1 : 0;
            passedShort += shownG(lines, -1, terms, random) >= lowG ? 1 : 0;
            passedOver += shownG(lines, 1, terms, random) <= highG ? 1 : 0;
        }
        assertClose(Math.max(tooLight, tooHeavy), onScale.chanceOfAlarm(), runs);
        assertClose(Math.max(passedShort, passedOver), onScale.chanceOfMiss(), runs);
    }

    private static void assertClose(int cases, double chance, int runs) {
        double sampling = Math.sqrt(chance * (1 - chance) / runs);
        assertThat((double) cases / runs).isCloseTo(chance, within(4 * sampling + 1e-5));
    }

    /** What the scale shows of a bag with so many seals more than it should have. */
    private static double shownG(
            List<ExpectedLine> lines, int moreSeals, WeighingTerms terms, Random random) {
        double contentG = 0;
        for (ExpectedLine line : lines) {
            double eachG = line.masses().lightestG();
            double scatter = terms.scatter().get(line.kind());
            double meanG = eachG * (1 + scatter * random.nextGaussian() / Math.sqrt(10));
            int more = line.kind() == CountedKind.SEAL ? moreSeals : 0;
            for (int piece = 0; piece < line.quantity().intValueExact() + more; piece++) {
                contentG += meanG + eachG * scatter * random.nextGaussian();
            }
        }
        double tareG = 6 + 3 * random.nextDouble();
        double step = terms.resolutionG();
        return Math.rint((tareG + contentG) / step) * step - Math.rint(tareG / step) * step;
    }

    @Test
    void takesOtherScattersWhenGiven() {
        WeighingTerms rough = new WeighingTerms(0.01, 10, 0.01, Map.of(CountedKind.TERMINAL, 0.2));
        assertThat(WeightStatement.of(SMALL_PARTS, rough).all().visible()).isFalse();
    }

    @Test
    void namesWhatWouldExplainALightBag() {
        WeighingTerms terms = WeighingTerms.usual(0.01);
        double fullG = SMALL_PARTS.stream().mapToDouble(line -> line.masses().totalG()).sum();
        Weighing light =
                Weighing.judge(SMALL_PARTS, Set.of(), new Reading(5, 5 + fullG - 0.55), terms);
        assertThat(light.outcome()).isEqualTo(Outcome.TOO_LIGHT);
        assertThat(light.candidates()).containsExactly(new PartNumber("TERMINAL"));
        assertThat(light.sentence().english())
                .startsWith("✘ Too light: 3.81 g where 4.29 to 4.43 g");
        Weighing right = Weighing.judge(SMALL_PARTS, Set.of(), new Reading(5, 5 + fullG), terms);
        assertThat(right.outcome()).isEqualTo(Outcome.AGREES);
    }

    @Test
    void provesNothingWhereTheScaleIsTooCoarse() {
        double fullG = BAG.stream().mapToDouble(line -> line.masses().totalG()).sum();
        WeighingTerms terms = WeighingTerms.usual(0.1);
        Weighing all = Weighing.judge(BAG, Set.of(), new Reading(0, fullG), terms);
        assertThat(all.outcome()).isEqualTo(Outcome.CANNOT_TELL);
        assertThat(all.sentence().english()).startsWith("⚠ The weight proves nothing");

        Set<PartNumber> byHand =
                WeightStatement.of(BAG, terms).byHand().stream()
                        .map(ExpectedLine::part)
                        .collect(Collectors.toSet());
        double restG =
                BAG.stream()
                        .filter(line -> !byHand.contains(line.part()))
                        .mapToDouble(line -> line.masses().totalG())
                        .sum();
        assertThat(Weighing.judge(BAG, byHand, new Reading(0, restG), terms).outcome())
                .isEqualTo(Outcome.AGREES);
        assertThat(Weighing.judge(BAG, byHand, new Reading(0, 2 * restG), terms).outcome())
                .isEqualTo(Outcome.TOO_HEAVY);
    }
}
