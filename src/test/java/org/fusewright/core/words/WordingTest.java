package org.fusewright.core.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;

/** How texts and figures are said. */
class WordingTest {
    private static final Wording GERMAN = new Wording(Language.GERMAN, UnitSystem.METRIC);

    /** Factors of the international yard and pound (1959) and of the Fahrenheit scale. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    METRE          | 3.048   | 2 | 3.05 m      | 10 ft
                    MILLIMETRE     | 38      | 0 | 38 mm       | 1.5 in
                    CELSIUS        | 40      | 0 | 40 C        | 104 F
                    KELVIN         | 25      | 0 | 25 K        | 45 F
                    GRAM           | 453.592 | 0 | 454 g       | 16 oz
                    NEWTON         | 44.48   | 0 | 44 N        | 10 lbf
                    AMPERE         | 7.5     | 2 | 7.5 A       | 7.5 A
                    NONE           | 3       | 0 | 3           | 3
                    SECOND         | 0.0042  | 1 | 4.2 ms      | 4.2 ms
                    SECOND         | 0.25    | 1 | 250 ms      | 250 ms
                    SECOND         | 5400    | 1 | 1.5 h       | 1.5 h
                    """)
    void saysAFigureInTheReadersUnits(
            Unit unit, double value, int decimals, String metric, String imperial) {
        Amount amount = new Amount(value, unit, decimals);

        assertThat(Wording.ENGLISH.say(amount)).isEqualTo(metric);
        assertThat(new Wording(Language.ENGLISH, UnitSystem.IMPERIAL).say(amount))
                .isEqualTo(imperial);
    }

    @Test
    void readsBackWhatItShows() {
        for (Unit unit : Unit.values()) {
            for (UnitSystem units : UnitSystem.values()) {
                assertThat(unit.read(unit.shown(12.5, units), units))
                        .isCloseTo(12.5, org.assertj.core.data.Offset.offset(1e-12));
            }
        }
    }

    @Test
    void putsValuesIntoTheText() {
        Phrase phrase =
                Phrase.of(
                        "voltage-drop.inside",
                        "Pump",
                        Amount.volts(0.25),
                        Amount.percent(1.5),
                        Amount.percent(3));

        assertThat(phrase.english())
                .isEqualTo("Pump loses 0.25 V out and back, 1.5 % of the 3 % that it may.");
        assertThat(GERMAN.say(phrase)).contains("0,25 V").contains("1,5 %");
    }

    @Test
    void saysTextsOneAfterTheOther() {
        assertThat(Text.listed(List.of(Text.verbatim("a"), Amount.volts(1))).english())
                .isEqualTo("a, 1 V");
    }

    @Test
    void rejectsATextThatIsNotInTheBundle() {
        Phrase unknown = Phrase.of("no.such.text");

        assertThatIllegalArgumentException().isThrownBy(unknown::english);
    }
}
