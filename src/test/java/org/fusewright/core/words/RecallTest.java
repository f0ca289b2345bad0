package org.fusewright.core.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Kept English sentences find their text again. */
class RecallTest {
    private static final Wording GERMAN = new Wording(Language.GERMAN, UnitSystem.METRIC);
    private static final Wording IMPERIAL = new Wording(Language.ENGLISH, UnitSystem.IMPERIAL);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    auto-reset 7.5 A | quote.device. | selbstrückstellender Automat 7,5 A
                    12 × 1.5 min | quote.detail. | 12 × 1,5 min
                    spare | quote.detail. | Ersatz
                    350 g, class up to 500 g | quote.detail. | 350 g, Klasse bis 500 g
                    M-10 for A-10: a fuse of the same 10 A and blades; it must be replaced after \
                    it has opened. | substitute. | M-10 für A-10: eine Sicherung mit denselben \
                    10 A und Flachsteckern; nach dem Auslösen muss sie ersetzt werden.
                    what nobody says | quote.detail. | what nobody says
                    """)
    void saysAKeptTextOfAFamilyInGerman(String kept, String family, String german) {
        assertThat(GERMAN.say(Recall.of(kept, family))).isEqualTo(german);
    }

    @Test
    void saysAKeptWarningInGermanWithWhatIsInIt() {
        String kept =
                Phrase.of(
                                "quote.warning.caution",
                                Phrase.of(
                                        "voltage-drop.beyond",
                                        "pump/out",
                                        Amount.volts(0.61),
                                        Amount.percent(5.1),
                                        Amount.percent(3)))
                        .english();

        assertThat(GERMAN.say(Recall.of(kept)))
                .isEqualTo(
                        "Vorbehalt: pump/out verliert hin und zurück 0,61 V, das sind 5,1 %;"
                                + " erlaubt sind 3 %.");
    }

    @Test
    void saysKeptFiguresInOtherUnits() {
        String kept =
                Phrase.of(
                                "cap-clearance.tallest",
                                "ARB-10",
                                new Amount(25.4, Unit.MILLIMETRE, 1),
                                "WDC-4",
                                new Amount(50.8, Unit.MILLIMETRE, 1))
                        .english();

        assertThat(IMPERIAL.say(Recall.of(kept)))
                .isEqualTo("The tallest part, ARB-10, stands 1 in high; cap WDC-4 clears 2 in.");
    }

    /** Without those of papers, which no document keeps. */
    static Stream<String> longTexts() {
        return Language.ENGLISH.keys().stream()
                .filter(key -> !key.startsWith("print."))
                .filter(key -> Language.ENGLISH.template(key).literal(0).toString().length() > 30)
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("longTexts")
    void saysWhatIsRecalledInEnglishAsItWasKept(String key) {
        Object[] values = IntStream.range(0, 10).mapToObj(i -> "V" + i).toArray();
        String kept = Phrase.of(key, values).english();

        assertThat(Recall.of(kept).english()).isEqualTo(kept);
        assertThat(GERMAN.say(Recall.of(kept))).isEqualTo(GERMAN.say(key, values));
    }
}
