package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Text;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.math.BigDecimal;

class PullTestTest {

    /** UL 486A, as a terminal maker's specification prints it; its 2/0 is a misprint. */
    @ParameterizedTest
    @CsvFileSource(resources = "/facts/crimp_pull_force.csv", numLinesToSkip = 1)
    void holdsTheForcesOfUl486A(String awg, double areaMm2, double leastN) {
        var test = PullTest.find(WireSize.parse(awg + " AWG").orElseThrow());
        if (awg.equals("2/0")) {
            assertThat(test).isEmpty();
        } else {
            assertThat(test).contains(new PullTest(leastN, Text.verbatim("UL 486A")));
        }
    }

    /** IEC 60352-2, from memory. */
    @ParameterizedTest
    @CsvFileSource(resources = "/facts/iec60352_2_crimp_pull_memory.csv", numLinesToSkip = 1)
    void holdsTheForcesOfIec60352(BigDecimal areaMm2, double leastN) {
        PullTest test = PullTest.find(WireSize.ofMetric(areaMm2)).orElseThrow();
        assertThat(test.leastN()).isEqualTo(leastN);
        assertThat(test.source().english()).isEqualTo("IEC 60352-2, from memory");
    }

    /** 0.35 mm2 lies above 0.32 mm2; 16 SAE holds 2,336 circular mils, 1.18 mm2, above 1.0 mm2. */
    @ParameterizedTest
    @CsvSource({"0.35 mm2, 40", "16 SAE, 108", "3.0 mm2, 230"})
    void asksBetweenTwoSizesForTheForceOfTheSmaller(String size, double leastN) {
        assertThat(PullTest.find(WireSize.parse(size).orElseThrow()))
                .hasValueSatisfying(test -> assertThat(test.leastN()).isEqualTo(leastN));
    }

    @ParameterizedTest
    @ValueSource(strings = {"16 mm2", "0.03 mm2", "4/0 SAE", "30 AWG"})
    void knowsNoForceBeyondTheTables(String size) {
        assertThat(PullTest.find(WireSize.parse(size).orElseThrow())).isEmpty();
    }
}
