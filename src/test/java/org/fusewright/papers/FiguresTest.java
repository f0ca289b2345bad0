package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {

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
        assertThat(Figures.of(value)).isEqualTo(printed);
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
        assertThat(Figures.of(value, limit)).isEqualTo(printed);
    }

    @Test
    void printsMetresToTheMillimetreWhereThatIsNeeded() {
        assertThat(Figures.metres(new Millimetres(900))).isEqualTo("0.90 m");
        assertThat(Figures.metres(new Millimetres(12_345))).isEqualTo("12.345 m");
        assertThat(Figures.metres(new Millimetres(20_000))).isEqualTo("20.00 m");
    }

    @Test
    void keepsTheStandardInAWireSize() {
        assertThat(Figures.size(WireSize.ofAwg(16))).isEqualTo("16 AWG");
        assertThat(Figures.size(WireSize.parse("0.75 mm2").orElseThrow())).isEqualTo("0.75 mm²");
    }
}
