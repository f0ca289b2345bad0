package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
    private static final Figures FIGURES = new Figures(Wording.ENGLISH);
    private static final Figures GERMAN =
            new Figures(new Wording(Language.GERMAN, UnitSystem.METRIC));
    private static final Figures IMPERIAL =
            new Figures(new Wording(Language.ENGLISH, UnitSystem.IMPERIAL));

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "7.5, 7.5",
        "10, 10",
        "0.1234567, 0.1235",
        "123456.4, 123456",
        "0.00001, 0.00001",
        "-3.00049, -3"
    })
    void printsFourDigitsAndNeverFewerThanTheWholeOnes(double value, String printed) {
        assertThat(FIGURES.of(value)).isEqualTo(printed);
    }

    @ParameterizedTest
    @CsvSource({
        "3.00004, 3, 3.00004",
        "10.004, 10, 10.004",
        "10.00000001, 10, 10.00000001",
        "2.5, 3, 2.5",
        "3, 3, 3"
    })
    void tellsAValueFromItsLimit(double value, double limit, String printed) {
        assertThat(FIGURES.of(value, limit)).isEqualTo(printed);
    }

    @Test
    void printsMetresToTheMillimetreWhereThatIsNeeded() {
        assertThat(FIGURES.metres(new Millimetres(900))).isEqualTo("0.90 m");
        assertThat(FIGURES.metres(new Millimetres(12_345))).isEqualTo("12.345 m");
        assertThat(FIGURES.metres(new Millimetres(20_000))).isEqualTo("20.00 m");
    }

    @Test
    void keepsTheStandardInAWireSize() {
        assertThat(FIGURES.size(WireSize.ofAwg(16))).isEqualTo("16 AWG");
        assertThat(FIGURES.size(WireSize.parse("0.75 mm2").orElseThrow())).isEqualTo("0.75 mm²");
    }

    @Test
    void writesTheLanguagesDecimalSign() {
        assertThat(GERMAN.of(7.5)).isEqualTo("7,5");
        assertThat(GERMAN.of(10.004, 10)).isEqualTo("10,004");
        assertThat(GERMAN.volts(11.5)).isEqualTo("11,50 V");
        assertThat(GERMAN.amperes(7.5)).isEqualTo("7,5 A");
        assertThat(GERMAN.metres(new Millimetres(900))).isEqualTo("0,90 m");
        assertThat(GERMAN.size(WireSize.parse("0.75 mm2").orElseThrow())).isEqualTo("0,75 mm²");
        assertThat(GERMAN.whole(1770, Unit.MILLIMETRE)).isEqualTo("1770");
    }

    /** International yard and pound (1959): 0.3048 m to the foot, 4.4482216152605 N to the lbf. */
    @Test
    void countsInTheReadersUnits() {
        assertThat(IMPERIAL.metres(new Millimetres(900))).isEqualTo("2.95 ft");
        assertThat(IMPERIAL.whole(1770, Unit.MILLIMETRE)).isEqualTo("69.69");
        assertThat(IMPERIAL.of(3.2, Unit.MILLIMETRE)).isEqualTo("0.126");
        assertThat(IMPERIAL.measure(108, Unit.NEWTON)).isEqualTo("24.28 lbf");
        assertThat(IMPERIAL.whole(100, Unit.CELSIUS)).isEqualTo("212");
        assertThat(IMPERIAL.sign(Unit.CELSIUS)).isEqualTo("°F");
        assertThat(IMPERIAL.size(WireSize.ofAwg(16))).isEqualTo("16 AWG");
    }
}
