package org.fusewright.jobs.load;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.job.LoadKind;
import org.fusewright.jobs.load.CustomerText.Phrase;
import org.fusewright.jobs.load.CustomerText.Wish;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;

class CustomerTextTest {
    /** A wish as one line: title, kind, count, draw, and what else was said. */
    private static String told(Phrase phrase) {
        String lost =
                phrase.notUnderstood().isEmpty()
                        ? ""
                        : " ?" + String.join(" ?", phrase.notUnderstood());
        return phrase.wish().map(CustomerTextTest::told).orElse("nothing") + lost;
    }

    private static String told(Wish wish) {
        List<String> words = new ArrayList<>();
        words.add(wish.title());
        words.add(wish.kindSaid() ? wish.kind().code() : "kind?");
        words.add(wish.count() == 1 ? "" : wish.count() + "x");
        words.add(number(wish.watts(), "W") + number(wish.amps(), "A"));
        words.add(number(wish.ratedV(), "V"));
        words.add(number(wish.runM(), "m"));
        words.add(wish.terminal());
        words.add(wish.momentary() ? "momentary" : "");
        words.add(wish.relay() ? "relay" : "");
        words.add(wish.returnPath());
        words.add(wish.colour());
        words.add(number(wish.ratingA(), "A-device"));
        words.add(wish.gauge());
        return words.stream().filter(word -> !word.isEmpty()).collect(Collectors.joining(" | "));
    }

    private static String number(OptionalDouble value, String unit) {
        return value.isPresent()
                ? String.valueOf(value.getAsDouble()).replaceFirst("\\.0$", "") + unit
                : "";
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = "=>",
            value = {
                "headlight 55W, 2m                  => Headlight | filament-lamp | 55W | 2m",
                "horn 4A momentary                  => Horn | coil | 4A | momentary",
                "fuel pump 5 amps relay             => Fuel pump | pump | 5A | relay",
                "2x indicator 21 W                  => Indicator | filament-lamp | 2x | 21W",
                "2 indicators 21W each, left        => Indicators | filament-lamp | 2x | 21W ?left",
                "Indicators 4 x 10 W                => Indicators | filament-lamp | 4x | 10W",
                "LED headlight 35w                  => LED headlight | led | 35W",
                "tail light (LED) 5 watts 2.4 m     => Tail light | led | 5W | 2.4m",
                "brake light 21W 2,5m               => Brake light | filament-lamp | 21W | 2.5m",
                "Headlight 60/55W                   => Headlight | filament-lamp | 60W",
                "a pair of spot lights 35W each     => Spot lights | filament-lamp | 2x | 35W",
                "twin horns 8A total                => Horns | coil | 2x | 4A",
                "heated grips: 45 W via relay       => Heated grips | resistive | 45W | relay",
                "radiator fan - 9.5 A, 6 ft away    => Radiator fan | motor | 9.5A | 1.829m",
                "radiator fan 9,5 A                 => Radiator fan | motor | 9.5A",
                "coolant pump 1.2 A at 13.5V        => Coolant pump | pump | 1.2A | 13.5V",
                "ECU 3 amps switched live           => ECU | electronic | 3A | 15",
                "ignition coil 4A 80 cm             => Ignition coil | coil | 4A | 0.8m",
                "GPS 500 mA permanent               => GPS | electronic | 0.5A | 30",
                "USB socket 2.1A with the ignition  => USB socket | socket | 2.1A | 15",
                "12V socket 10A                     => Socket | socket | 10A | 12V",
                "winch 0.5 kW                       => Winch | motor | 500W",
                "starter relay 3A push button       => Starter relay | coil | 3A | momentary",
                "fuel injectors x2 1 amp            => Fuel injectors | coil | 2x | 1A",
                "horn, 4A, black wire               => Horn | coil | 4A | BK",
                "horn 4A red/black wire             => Horn | coil | 4A | RDBK",
                "horn 4A blue with a white stripe wire => Horn | coil | 4A | BUWH",
                "horn 4A, 10A fuse                  => Horn | coil | 4A | 10A-device",
                "horn 4A fused at 10A               => Horn | coil | 4A | 10A-device",
                "horn 4A 1.5 mm2                    => Horn | coil | 4A | 1.5 mm2",
                "horn 4A 16 awg                     => Horn | coil | 4A | 16 AWG",
                "horn 4A 16 gauge                   => Horn | coil | 4A ?16 gauge",
                "horn 4A no relay                   => Horn | coil | 4A",
                "horn 4A ground wire                => Horn | coil | 4A | wire",
                "horn 4A chassis ground             => Horn | coil | 4A | chassis",
                "rear work lamp 6' 2\" 18 W         => Rear work lamp | filament-lamp | 18W |"
                        + " 1.88m",
                "speedo 200mA 1200 mm               => Speedo | electronic | 0.2A | 1.2m",
                "dash cam 1A always live            => Dash cam | electronic | 1A | 30",
                "thingamajig 3A                     => Thingamajig | kind? | 3A",
                "55W                                => kind? | 55W",
                "headlight                          => Headlight | filament-lamp",
                "headlight 55                       => Headlight | filament-lamp ?55",
                "headlight 55W near Uncle Ted       => Headlight | filament-lamp | 55W ?near Uncle"
                        + " Ted",
                "3 rear marker lights 5W => Rear marker lights | filament-lamp | 3x | 5W",
                "left heated seat 30W               => Left heated seat | resistive | 30W",
                "I would like the horn 4A           => Horn | coil | 4A ?would like",
                "LED light bar 72W 3 metres         => LED light bar | led | 72W | 3m",
                "air compressor 15 A intermittent   => Air compressor | motor | 15A | momentary",
                "Hi Tom                             => nothing ?Hi Tom",
                "please call 0301 555 123           => nothing ?please call 0301 555 123",
                "asdf qwer 1234                     => nothing ?asdf qwer 1234",
                "-----                              => nothing ?-----",
                "2m                                 => nothing ?2m",
                "<b>horn</b> 4A                     => Horn | coil | 4A ?<b> ?</b>",
                "<script>alert(1)</script>          => nothing ?<script>alert(1)</script>",
            })
    void readsAPhrase(String text, String read) {
        assertThat(CustomerText.read(text).phrases().stream().map(CustomerTextTest::told))
                .containsExactly(read);
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = "=>",
            value = {
                "Scheinwerfer 55W, 2m               => Scheinwerfer | filament-lamp | 55W | 2m",
                "Hupe 4 A, Taster                   => Hupe | coil | 4A | momentary",
                "Benzinpumpe 5 Ampere mit Relais    => Benzinpumpe | pump | 5A | relay",
                "Griffheizung 45 W über Relais      => Griffheizung | resistive | 45W | relay",
                "2x Blinker 21 W                    => Blinker | filament-lamp | 2x | 21W",
                "Blinker hinten 4 x 10 W            => Blinker hinten | filament-lamp | 4x | 10W",
                "zwei Zusatzscheinwerfer je 35 W    => Zusatzscheinwerfer | filament-lamp | 2x |"
                        + " 35W",
                "ein Paar Nebelscheinwerfer je 35 W => Nebelscheinwerfer | filament-lamp | 2x |"
                        + " 35W",
                "zwei Hupen 8A insgesamt            => Hupen | coil | 2x | 4A",
                "3 Begrenzungsleuchten 5W           => Begrenzungsleuchten | filament-lamp | 3x |"
                        + " 5W",
                "LED-Scheinwerfer 35 Watt           => LED-Scheinwerfer | led | 35W",
                "Rücklicht (LED) 5 Watt 2,4 m       => Rücklicht | led | 5W | 2.4m",
                "Kühlerlüfter 9,5 A, 1,8 Meter lang => Kühlerlüfter | motor | 9.5A | 1.8m",
                "Zündspule 4A 80 cm                 => Zündspule | coil | 4A | 0.8m",
                "Ölpumpe 6A                         => Ölpumpe | pump | 6A",
                "Steuergerät 3A Zündungsplus        => Steuergerät | electronic | 3A | 15",
                "USB-Steckdose 2,1A mit der Zündung => USB-Steckdose | socket | 2.1A | 15",
                "Navi 500 mA Dauerplus              => Navi | electronic | 0.5A | 30",
                "Alarmanlage 200mA Klemme 30        => Alarmanlage | electronic | 0.2A | 30",
                "Anlasserrelais 3A kurzzeitig       => Anlasserrelais | coil | 3A | momentary",
                "Hupe 4A ohne Relais                => Hupe | coil | 4A",
                "Hupe 4A, schwarzes Kabel           => Hupe | coil | 4A | BK",
                "Hupe 4A rot/schwarze Leitung       => Hupe | coil | 4A | RDBK",
                "Hupe 4A, Leitung blau mit weiß     => Hupe | coil | 4A | BUWH",
                "Hupe 4A, 10A-Sicherung             => Hupe | coil | 4A | 10A-device",
                "Hupe 4A abgesichert mit 10A        => Hupe | coil | 4A | 10A-device",
                "Hupe 4A 1,5 mm²                    => Hupe | coil | 4A | 1.5 mm2",
                "Hupe 4A 2,5 qmm                    => Hupe | coil | 4A | 2.5 mm2",
                "Hupe 4A eigene Masseleitung        => Hupe | coil | 4A | wire",
                "Hupe 4A Masse am Rahmen            => Hupe | coil | 4A | chassis",
                "Ich hätte gern die Hupe 4A         => Hupe | coil | 4A",
                "Hupe 4A neben Onkel Willi          => Hupe | coil | 4A ?neben Onkel Willi",
                "Hallo Tom                          => nothing ?Hallo Tom",
            })
    void readsAGermanPhrase(String text, String read) {
        assertThat(CustomerText.read(text).phrases().stream().map(CustomerTextTest::told))
                .containsExactly(read);
    }

    @Test
    void keepsApartWhatATextLists() {
        assertThat(titles("headlight 55W, 2m; horn 4A momentary; fuel pump 5 amps relay"))
                .containsExactly("Headlight", "Horn", "Fuel pump");
        assertThat(titles("headlight 55W, horn 4A and fuel pump 5A, 1,5m"))
                .containsExactly("Headlight", "Horn", "Fuel pump");
        assertThat(titles("- headlight 55W\r\n- horn 4A\n\n• GPS 1A. ECU 2A"))
                .containsExactly("Headlight", "Horn", "GPS", "ECU");
        assertThat(titles("Scheinwerfer 55W, Hupe 4A und Benzinpumpe 5A, 1,5m"))
                .containsExactly("Scheinwerfer", "Hupe", "Benzinpumpe");
        assertThat(titles("thing 3A, gadget 4A")).containsExactly("Thing", "Gadget");
    }

    private static List<String> titles(String text) {
        return CustomerText.read(text).phrases().stream()
                .map(phrase -> phrase.wish().orElseThrow().title())
                .toList();
    }

    @Test
    void keepsAllOfAMailInSight() {
        String mail =
                """
                Hi there,
                for the scrambler I need: headlight 55/60W, 1.2m
                2x indicators 10W front; horn 3.5A momentary
                It should be done by Friday. Cheers, Bo
                """;
        CustomerText read = CustomerText.read(mail);
        assertThat(read.phrases().stream().map(CustomerTextTest::told))
                .containsExactly(
                        "nothing ?Hi there",
                        "Headlight | filament-lamp | 60W | 1.2m ?scrambler",
                        "Indicators | filament-lamp | 2x | 10W ?front",
                        "Horn | coil | 3.5A | momentary",
                        "nothing ?It should be done by Friday",
                        "nothing ?Cheers, Bo");
        assertThat(read.unread()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\n\n\n", ";;;", ", , ,", "\t"})
    void findsNothingInAnEmptyText(String text) {
        assertThat(CustomerText.read(text).phrases()).isEmpty();
        assertThat(CustomerText.read(text).unread()).isZero();
    }

    @Test
    void saysHowMuchOfATextIsTooLong() {
        CustomerText words = CustomerText.read("x".repeat(CustomerText.MAX_CHARACTERS + 17));
        assertThat(words.unread()).isEqualTo(17);
        assertThat(words.phrases()).hasSize(1);
        assertThat(words.phrases().getFirst().text()).hasSize(CustomerText.MAX_CHARACTERS);

        CustomerText horns = CustomerText.read("horn 4A;".repeat(300));
        assertThat(horns.phrases()).hasSize(CustomerText.MAX_PHRASES);
        assertThat(horns.unread()).isEqualTo(8 * (300 - CustomerText.MAX_PHRASES));
    }

    static final List<String> WORDS = LoadWords.listWords();

    @ParameterizedTest
    @FieldSource("WORDS")
    void knowsEachWordAloneAndInNumber(String word) {
        LoadKind kind = LoadWords.find(word).orElseThrow().kind();
        assertThat(LoadWords.find("two " + word.replace(' ', '-') + "s").orElseThrow().kind())
                .isEqualTo(kind);
        assertThat(LoadWords.find("x" + word + "x")).isEmpty();
    }

    /** Whatever comes in: nothing is lost but the signs between phrases, and nothing breaks. */
    @Test
    void keepsEachLetterOfAnyText() {
        Random random = new Random(20);
        String[] bits = {
            "horn",
            "4A",
            "2x",
            ",",
            ";",
            " ",
            " and ",
            " und ",
            "Hupe",
            "rotes Kabel",
            "über Relais",
            "55/60W",
            "'",
            "\"",
            "6'2\"",
            "ß",
            "İ",
            "é",
            "relay",
            "\n",
            "1,5",
            "m",
            ".",
            "<b>",
            "&amp;",
            "red wire",
            "12V",
            "-",
            "fuse 10A",
            "\t",
            "total",
            "two",
            "mm2",
            "🔥",
            "9999999",
            "x2",
            "LED"
        };
        for (int i = 0; i < 3000; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(20); n > 0; n--) {
                text.append(bits[random.nextInt(bits.length)])
                        .append(random.nextBoolean() ? " " : "");
            }
            CustomerText read = CustomerText.read(text.toString());
            assertThat(letters(read.phrases().stream().map(Phrase::text).toList()))
                    .describedAs(text.toString())
                    .isEqualTo(letters(List.of(text.toString())));
            assertThat(read.unread()).isZero();
        }
    }

    /** Without spaces, signs that part phrases, and the words that join them. */
    private static String letters(List<String> texts) {
        return String.join(" ", texts).replaceAll("\\b(?:and|und)\\b|[^\\p{L}\\p{N}]", "");
    }
}
