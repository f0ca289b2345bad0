package org.fusewright.jobs.load;

import org.fusewright.core.job.LoadKind;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The English and German words by which customers name their loads, and the kind that each is. */
final class LoadWords {
    /** A word of a text from {@code start} to {@code end} that names a load. */
    record Found(int start, int end, LoadKind kind) {}

    private record Word(Pattern pattern, LoadKind kind, int length) {}

    private static final Map<LoadKind, String> ENGLISH =
            Map.of(
                    LoadKind.FILAMENT_LAMP,
                    "headlight, headlamp, head light, head lamp, low beam, high beam, main beam,"
                        + " dip beam, dipped beam, tail light, taillight, tail lamp, rear light,"
                        + " rear lamp, brake light, brake lamp, stop light, stop lamp, indicator,"
                        + " turn signal, turn light, blinker, winker, flasher, spot light,"
                        + " spotlight, spot lamp, fog light, fog lamp, driving light, work light,"
                        + " work lamp, plate light, number plate light, licence plate light,"
                        + " license plate light, marker light, running light, position light,"
                        + " parking light, pilot light, side light, sidelight, dash light,"
                        + " instrument light, warning light, neutral light, map light, courtesy"
                        + " light, halogen, bulb, lamp, light, spots",
                    LoadKind.LED,
                    "light bar, lightbar, led strip, led bar, led pod",
                    LoadKind.COIL,
                    "horn, ignition coil, coil, solenoid, starter solenoid, starter relay,"
                        + " injector, fuel injector, contactor, valve, purge valve, clutch, magnet,"
                        + " siren",
                    LoadKind.MOTOR,
                    "fan, radiator fan, cooling fan, motor, winch, wiper, actuator, servo, blower,"
                            + " compressor, air compressor, starter, starter motor, window",
                    LoadKind.PUMP,
                    "pump, fuel pump, water pump, coolant pump, washer pump, oil pump, bilge pump,"
                            + " air pump, washer",
                    LoadKind.RESISTIVE,
                    "heated grip, heated seat, seat heater, grip heater, heater, heated vest,"
                            + " heated jacket, glow plug, defroster, heated clothing, heated gear",
                    LoadKind.ELECTRONIC,
                    "ecu, ecm, controller, gps, navigation, sat nav, satnav, radio, stereo,"
                        + " amplifier, speedo, speedometer, gauge, tacho, tachometer, rev counter,"
                        + " dash, dashboard, instrument, cluster, display, alarm, tracker, camera,"
                        + " dashcam, dash cam, intercom, ignition module, ignition unit, cdi,"
                        + " igniter, module, sensor, computer, quickshifter, immobiliser,"
                        + " immobilizer, switch unit",
                    LoadKind.SOCKET,
                    "socket, usb, usb socket, usb port, usb charger, usb outlet, power socket,"
                            + " power outlet, outlet, accessory socket, cigarette lighter, cigar"
                            + " lighter, charger, phone charger, lighter socket, accessory plug");

    private static final Map<LoadKind, String> GERMAN =
            Map.of(
                    LoadKind.FILAMENT_LAMP,
                    "scheinwerfer, hauptscheinwerfer, zusatzscheinwerfer, nebelscheinwerfer,"
                            + " fernscheinwerfer, arbeitsscheinwerfer, abblendlicht, fernlicht,"
                            + " standlicht, tagfahrlicht, rücklicht, rückleuchte, schlusslicht,"
                            + " schlussleuchte, nebelschlussleuchte, bremslicht, bremsleuchte,"
                            + " blinker, blinkleuchte, fahrtrichtungsanzeiger, positionslicht,"
                            + " begrenzungsleuchte, kennzeichenlicht, kennzeichenleuchte,"
                            + " kennzeichenbeleuchtung, instrumentenbeleuchtung, tachobeleuchtung,"
                            + " kontrollleuchte, kontrolllampe, leselampe, glühlampe, glühbirne,"
                            + " birne, lampe, leuchte, licht",
                    LoadKind.LED,
                    "led leiste, led balken, led streifen, lichtleiste, lichtbalken",
                    LoadKind.COIL,
                    "hupe, fanfare, sirene, zündspule, spule, magnetventil, einspritzventil,"
                            + " einspritzdüse, ventil, anlasserrelais, starterrelais, schütz,"
                            + " magnetkupplung",
                    LoadKind.MOTOR,
                    "lüfter, kühlerlüfter, ventilator, gebläse, seilwinde, winde, wischer,"
                            + " scheibenwischer, stellmotor, stellantrieb, kompressor,"
                            + " luftkompressor, anlasser, startermotor, fensterheber",
                    LoadKind.PUMP,
                    "pumpe, benzinpumpe, kraftstoffpumpe, spritpumpe, wasserpumpe,"
                            + " kühlmittelpumpe, waschpumpe, scheibenwaschpumpe, ölpumpe,"
                            + " lenzpumpe, luftpumpe",
                    LoadKind.RESISTIVE,
                    "heizgriff, griffheizung, sitzheizung, heizweste, heizjacke, heizkleidung,"
                            + " heizung, glühkerze",
                    LoadKind.ELECTRONIC,
                    "steuergerät, motorsteuergerät, bordcomputer, navi, navigationsgerät,"
                            + " verstärker, drehzahlmesser, cockpit, anzeige, bildschirm,"
                            + " alarmanlage, wegfahrsperre, kamera, zündmodul, zündbox, zündanlage,"
                            + " gegensprechanlage, schaltassistent",
                    LoadKind.SOCKET,
                    "steckdose, bordsteckdose, zubehörsteckdose, usb steckdose, usb buchse,"
                            + " usb anschluss, ladebuchse, zigarettenanzünder, ladegerät,"
                            + " handyladegerät");

    private static final String ENGLISH_ENDINGS = "(?:e?s)?";
    private static final String GERMAN_ENDINGS = "(?:en|er|es|e|n|s)?";

    /** Long ones first: a fuel pump is more than a pump. */
    private static final List<Word> LONGEST_FIRST =
            Stream.concat(words(ENGLISH, ENGLISH_ENDINGS), words(GERMAN, GERMAN_ENDINGS))
                    .sorted(
                            Comparator.comparingInt(Word::length)
                                    .reversed()
                                    .thenComparing(word -> word.pattern().pattern()))
                    .toList();

    private LoadWords() {}

    private static Stream<Word> words(Map<LoadKind, String> ofKinds, String endings) {
        return ofKinds.entrySet().stream()
                .flatMap(
                        entry ->
                                Stream.of(entry.getValue().split(", "))
                                        .map(word -> word(word, endings, entry.getKey())));
    }

    private static Word word(String text, String endings, LoadKind kind) {
        String spaced = text.replace(" ", "[ -]");
        if (text.equals("gauge")) {
            // "16 gauge" is a wire.
            spaced = "(?<!\\d[ -]?)gauge";
        }
        String whole = "(?<![\\p{L}\\d_])" + spaced + endings + "(?![\\p{L}\\d_])";
        return new Word(Pattern.compile(whole), kind, text.length());
    }

    /** The most telling word of a text in lower case. */
    static Optional<Found> find(CharSequence text) {
        for (Word word : LONGEST_FIRST) {
            Matcher matcher = word.pattern().matcher(text);
            if (matcher.find()) {
                return Optional.of(new Found(matcher.start(), matcher.end(), word.kind()));
            }
        }
        return Optional.empty();
    }

    /** All words that there are, for tests. */
    static List<String> listWords() {
        List<String> words = new ArrayList<>();
        Stream.of(ENGLISH, GERMAN)
                .flatMap(ofKinds -> ofKinds.values().stream())
                .forEach(list -> words.addAll(List.of(list.split(", "))));
        return words;
    }
}
