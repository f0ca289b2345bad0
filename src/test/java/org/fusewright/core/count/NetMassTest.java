package org.fusewright.core.count;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.Map;
import java.util.Random;

class NetMassTest {

    /** Common tables of the normal distribution, from memory. */
    @ParameterizedTest
    @CsvSource({
        "0, 0.5, 1e-15",
        "1, 0.158655253931, 1e-12",
        "1.959963984540, 0.025, 1e-12",
        "2.326347874041, 0.01, 1e-12",
        "3, 1.349898031630e-3, 1e-15",
        "3.090232306168, 0.001, 1e-14",
        "5, 2.866515718792e-7, 1e-18",
        "-1, 0.841344746069, 1e-12",
    })
    void agreesWithTablesOfTheNormalDistribution(double x, double tail, double tolerance) {
        assertThat(NormalTail.of(x)).isCloseTo(tail, within(tolerance));
    }

    /**
     * Counting N pieces by weight, when the mean of one is known from n of them and pieces scatter
     * by c: standard deviations of the computed count. The values come from the worked example of
     * that formula, the second column from 20,000 runs of it.
     */
    @ParameterizedTest
    @CsvSource({
        "100, 10, 1, 0.332, 0.333",
        "500, 10, 1, 1.597, 1.599",
        "100, 25, 2, 0.447, 0.453",
        "40, 10, 3, 0.424, 0.423",
    })
    void reproducesTheWorkedExampleOfCountingByWeight(
            int pieces, int sample, double percent, double worked, double simulated) {
        double eachG = 0.47;
        WeighingTerms terms =
                new WeighingTerms(0.001, sample, 0.01, Map.of(CountedKind.TERMINAL, percent / 100));
        NetMass mass = terms.massOf(List.of(Bench.line("T", CountedKind.TERMINAL, pieces, eachG)));
        double pieceDeviation = mass.scatterG() / eachG;
        assertThat(pieceDeviation).isCloseTo(worked, within(0.0005));
        assertThat(pieceDeviation).isCloseTo(simulated, within(0.02 * simulated));
    }

    @Test
    void findsWhatChanceExceedsAsOftenAsAsked() {
        for (double scatterG : new double[] {0, 1e-5, 0.02, 0.1, 5, 500}) {
            NetMass mass = new NetMass(100, scatterG, 0.1);
            for (double chance : new double[] {0.2, 0.01, 1e-5}) {
                assertThat(mass.chanceOff(mass.offExceededBy(chance)))
                        .describedAs("%s %s", scatterG, chance)
                        .isCloseTo(chance, within(chance * 1e-3));
            }
        }
    }

    /** Readings rounded to steps, of empty bags of any mass and of contents that scatter. */
    @ParameterizedTest
    @CsvSource({
        "30.00, 0.00, 0.1, 30.0",
        "30.03, 0.00, 0.1, 30.1",
        "30.03, 0.01, 0.1, 30.1",
        "30.08, 0.05, 0.1, 30.0",
        "30.04, 0.20, 0.1, 29.9",
        "30.47, 0.30, 1.0, 31.0",
        "30.00, 0.30, 0.01, 29.5",
    })
    void agreesWithRoundedReadings(
            double meanG, double scatterG, double resolutionG, double markG) {
        Random random = new Random(20_261_125);
        int runs = 200_000;
        int below = 0;
        for (int run = 0; run < runs; run++) {
            double tareG = 8 + random.nextDouble();
            double grossG = tareG + meanG + scatterG * random.nextGaussian();
            double shownG = round(grossG, resolutionG) - round(tareG, resolutionG);
            below += shownG < markG - resolutionG / 2 ? 1 : 0;
        }
        double chance = new NetMass(meanG, scatterG, resolutionG).chanceShownBelow(markG);
        double sampling = Math.sqrt(chance * (1 - chance) / runs);
        assertThat((double) below / runs).isCloseTo(chance, within(4 * sampling + 1e-9));
    }

    private static double round(double massG, double stepG) {
        return Math.rint(massG / stepG) * stepG;
    }
}
