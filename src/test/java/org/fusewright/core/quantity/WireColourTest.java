package org.fusewright.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Set;

class WireColourTest {

    /** No insulation is gold or silver. */
    private static final Set<String> METALLIC = Set.of("GD", "SR");

    /** IEC 60757, all letter codes; from memory. Green-and-yellow is a base and a stripe here. */
    @ParameterizedTest(name = "IEC 60757: {0}, {1}, from memory")
    @CsvFileSource(resources = "/facts/iec60757_colours.csv", numLinesToSkip = 1)
    void readsTheLetterCodes(String code, String colour, String status) {
        assertThat(status).isEqualTo("MEMORY");
        assertThat(WireColour.parse(code).isPresent()).isEqualTo(!METALLIC.contains(code));
        if (code.length() == 4) {
            WireColour striped = WireColour.parse(code).orElseThrow();
            assertThat(striped.base().code()).isEqualTo("GN");
            assertThat(striped.stripe()).hasValue(new WireColour("YE"));
        } else {
            assertThat(WireColour.CODES.contains(code)).isEqualTo(!METALLIC.contains(code));
            if (!METALLIC.contains(code)) {
                assertThat(new WireColour(code).inWords()).isEqualTo(colour);
            }
        }
    }

    @Test
    void rejectsWhatIsNoLetterCode() {
        for (String code : new String[] {"", "R", "RE", "rd", "RDRD", "RDXX", "RDBKWH"}) {
            assertThat(WireColour.parse(code)).as(code).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({"RDBK, red/black", "VTWH, violet/white", "GNYE, green/yellow"})
    void namesTheStripeAfterTheBase(String code, String words) {
        assertThat(new WireColour(code).inWords()).isEqualTo(words);
    }
}
