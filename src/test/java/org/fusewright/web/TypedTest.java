package org.fusewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.context.i18n.LocaleContextHolder;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;

/** Figures in the fields of forms. */
class TypedTest {
    private static void read(Language language, UnitSystem units) {
        LocaleContextHolder.setLocaleContext(Words.Reader.of(language, units, "/jobs"));
    }

    @AfterEach
    void forgetTheReader() {
        LocaleContextHolder.resetLocaleContext();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    METRE      | 1.1  | 1.1 | 3.61
                    METRE      | 0.6  | 0.6 | 1.97
                    METRE      | 3.048| 3.048 | 10
                    MILLIMETRE | 40   | 40  | 1.57
                    MILLIMETRE | 310  | 310 | 12.2
                    CELSIUS    | 40   | 40  | 104
                    CELSIUS    | 37.5 | 37.5 | 99.5
                    GRAM       | 0.1  | 0.1 | 0.0035
                    NONE       | 7.5  | 7.5 | 7.5
                    """)
    void showsAsFewDecimalsAsItTakes(Unit unit, BigDecimal value, String metric, String imperial) {
        read(Language.ENGLISH, UnitSystem.METRIC);
        assertThat(Typed.shown(value, unit)).isEqualTo(metric);
        read(Language.GERMAN, UnitSystem.METRIC);
        assertThat(Typed.shown(value, unit)).isEqualTo(metric.replace('.', ','));
        read(Language.ENGLISH, UnitSystem.IMPERIAL);
        assertThat(Typed.shown(value, unit)).isEqualTo(imperial);
    }

    /** A form that is sent untouched must not change the job, however often it is sent. */
    @ParameterizedTest
    @EnumSource(names = {"METRE", "MILLIMETRE", "CELSIUS", "GRAM", "NONE"})
    void readsBackExactlyWhatItShows(Unit unit) {
        Random random = new Random(7);
        for (int i = 0; i < 4000; i++) {
            int decimals = unit == Unit.MILLIMETRE ? 0 : random.nextInt(6);
            BigDecimal value =
                    BigDecimal.valueOf(random.nextDouble() * Math.pow(10, random.nextInt(5)))
                            .setScale(decimals, RoundingMode.HALF_UP);
            for (Language language : Language.values()) {
                for (UnitSystem units : UnitSystem.values()) {
                    read(language, units);
                    assertThat(Typed.read(Typed.shown(value, unit), unit))
                            .as("%s %s", value, units)
                            .get()
                            .satisfies(back -> assertThat(back).isEqualByComparingTo(value));
                }
            }
        }
    }

    /** The foot is 0.3048 m and the inch 25.4 mm, exactly (1959). */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    METRE      | 1,1     | 1.1   | 0.335
                    METRE      | 1.1     | 1.1   | 0.335
                    METRE      | 3 ft    | 0.914 | 0.914
                    METRE      | 3'      | 0.914 | 0.914
                    METRE      | 3' 6"   | 1.067 | 1.067
                    METRE      | 3ft 6in | 1.067 | 1.067
                    METRE      | 18in    | 0.457 | 0.457
                    METRE      | 2m      | 2     | 2
                    METRE      | 40 cm   | 0.4   | 0.4
                    MILLIMETRE | 1.5     | 1.5   | 38
                    MILLIMETRE | 1.5 in  | 38    | 38
                    MILLIMETRE | 4 cm    | 40    | 40
                    CELSIUS    | 104     | 104   | 40
                    CELSIUS    | 104 °F  | 40    | 40
                    CELSIUS    | 40 °C   | 40    | 40
                    GRAM       | 1 oz    | 28.35 | 28.35
                    AMPERE     | 7,5 A   | 7.5   | 7.5
                    """)
    void readsACommaAPointAndOtherUnits(
            Unit unit, String typed, BigDecimal metric, BigDecimal imperial) {
        read(Language.GERMAN, UnitSystem.METRIC);
        assertThat(Typed.read(typed, unit)).get().satisfies(is(metric));
        read(Language.ENGLISH, UnitSystem.IMPERIAL);
        assertThat(Typed.read(typed, unit)).get().satisfies(is(imperial));
    }

    private static java.util.function.Consumer<BigDecimal> is(BigDecimal expected) {
        return value -> assertThat(value).isEqualByComparingTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "METRE, long",
        "METRE, 1.2.3",
        "METRE, 3 kg",
        "METRE, ''",
        "AMPERE, 3 m",
        "NONE, 1e5"
    })
    void readsNothingElse(Unit unit, String typed) {
        assertThat(Typed.read(typed, unit)).isEmpty();
    }

    @Test
    void takesAFormInTheUnitsThatItWasShownIn() {
        read(Language.GERMAN, UnitSystem.METRIC);

        Typed.in("imperial");

        assertThat(Typed.read("104", Unit.CELSIUS)).get().satisfies(is(BigDecimal.valueOf(40)));
        assertThat(Typed.shown(new BigDecimal("1.1"), Unit.METRE)).isEqualTo("3,61");
    }
}
