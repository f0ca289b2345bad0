package org.fusewright.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class WireColourTest {

    /** IEC 60757, from memory; gold and silver are no colours of insulation here. */
    @ParameterizedTest
    @CsvFileSource(resources = "/facts/iec60757_colours.csv", numLinesToSkip = 1)
    void namesTheColoursOfIec60757(String code, String word) {
        if (WireColour.CODES.contains(code)) {
            assertThat(new WireColour(code).inWords()).isEqualTo(word);
        } else {
            assertThat(code).isIn("GD", "SR", "GNYE");
        }
    }

    @ParameterizedTest
    @CsvSource({"RDBK, red/black", "VTWH, violet/white", "GNYE, green/yellow"})
    void namesTheStripeAfterTheBase(String code, String words) {
        assertThat(new WireColour(code).inWords()).isEqualTo(words);
    }
}
