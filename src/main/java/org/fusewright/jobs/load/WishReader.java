package org.fusewright.jobs.load;

import org.fusewright.core.job.LoadKind;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.jobs.load.CustomerText.Phrase;
import org.fusewright.jobs.load.CustomerText.Piece;
import org.fusewright.jobs.load.CustomerText.Wish;
import org.fusewright.jobs.load.LoadWords.Found;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads one phrase. Each pattern takes what it understands out of {@code left}; what stays there at
 * the end was not understood.
 */
final class WishReader {
    private static final int MOST_CHARACTERS = 400;
    private static final int LONGEST_TITLE = 60;
    private static final char TAKEN = '\u0001';

    private static final String NUMBER = "(?<![\\d.,])(\\d{1,6}(?:[.,]\\d{1,4})?)\\s?";
    private static final String AMPS = "(?:a|amps?|amperes?)\\b";
    private static final String COLOUR_WORDS =
            "(black|brown|red|orange|yellow|green|blue|violet|purple|grey|gray|white|pink"
                    + "|turquoise|schwarz|braun|rot|gelb|grün|blau|violett|lila|grau|weiß|weiss"
                    + "|rosa|türkis)(?:e[mnrs]?)?";
    private static final String LEAD_WORDS =
            "(?:wires?|leads?|cables?|leitung(?:en)?|kabel|adern?|draht)\\b";

    private static final Map<String, Integer> COUNTS =
            Map.ofEntries(
                    Map.entry("one", 1),
                    Map.entry("ein", 1),
                    Map.entry("eine", 1),
                    Map.entry("einen", 1),
                    Map.entry("single", 1),
                    Map.entry("two", 2),
                    Map.entry("zwei", 2),
                    Map.entry("beide", 2),
                    Map.entry("paar", 2),
                    Map.entry("both", 2),
                    Map.entry("pair", 2),
                    Map.entry("twin", 2),
                    Map.entry("dual", 2),
                    Map.entry("three", 3),
                    Map.entry("drei", 3),
                    Map.entry("four", 4),
                    Map.entry("vier", 4),
                    Map.entry("five", 5),
                    Map.entry("fünf", 5),
                    Map.entry("six", 6),
                    Map.entry("sechs", 6),
                    Map.entry("eight", 8),
                    Map.entry("acht", 8));

    /** Of millimetre, centimetre, foot, inch, yard, metre: in the order of the pattern. */
    private static final List<Double> METRES = List.of(0.001, 0.01, 0.3048, 0.0254, 0.9144, 1.0);

    /** What is said of a fuse or breaker, the surest way of saying it first. */
    private static final List<Pattern> RATINGS =
            Stream.of(
                            "\\b(?:fused|(?:fuse|breaker)(?: at| of|:)) (?:at )?" + NUMBER + AMPS,
                            "\\b(?:abgesichert|(?:sicherung|automat)(?: mit| von|:)) (?:mit )?"
                                    + NUMBER
                                    + AMPS,
                            NUMBER + AMPS + " ?(?:blade |mini )?(?:fuse|breaker)\\b",
                            NUMBER + AMPS + "[ -]?(?:abgesichert|(?:flach|mini-?)?sicherung)\\b",
                            "\\b(?:fuse|breaker|sicherung|automat) " + NUMBER + AMPS)
                    .map(Pattern::compile)
                    .toList();

    private static final Pattern GAUGE_AREA =
            Pattern.compile(NUMBER + "(?:mm2|mm²|mm\\^2|sqmm|qmm|sq\\.? ?mm)(?![a-z0-9])");
    private static final Pattern GAUGE_NUMBER = Pattern.compile("\\b(\\d{1,2}) ?(awg|sae)\\b");
    private static final Pattern TWO_WATTS =
            Pattern.compile(NUMBER + "/\\s?(\\d{1,4}) ?(?:w|watts?)\\b");
    private static final Pattern AMOUNT =
            Pattern.compile(
                    NUMBER
                            + "-?(kw|w|watts?|ma|milliamps?|milliamperes?|a|amps?|amperes?)(?![a-z0-9])");
    private static final Pattern VOLTS = Pattern.compile(NUMBER + "-?(?:v|volts?)(?![a-z0-9])");
    private static final Pattern FEET_AND_INCHES =
            Pattern.compile("(\\d{1,3}) ?(?:ft|feet|foot|')\\s?(\\d{1,2}) ?(?:in|inch|inches|\")");
    private static final Pattern LENGTH =
            Pattern.compile(
                    NUMBER
                            + "(?:(mm)|(cm|zentimetern?)|(ft|feet|foot|')|(inch|inches|in(?!"
                            + " (?:the|a|my|front)"
                            + "\\b)|\")|(yd|yards?)|(m|metres?|meters?|metern|mtrs?))(?![a-z0-9])");
    private static final Pattern TIMES =
            Pattern.compile(
                    "(?<![\\d.,])(\\d{1,2}) ?(?:x|×|\\*)(?![a-z])"
                            + "|(?<![a-z0-9])[x×] ?(\\d{1,2})(?![\\d.,])"
                            + "|(?<![\\d.,])(\\d{1,2}) ?(?:off|pcs|pc|pieces|stück|stk)\\b");
    private static final Pattern COUNT_WORD =
            Pattern.compile(
                    "\\b(?:a |ein )?(one|single|two|both|pair|twin|dual|three|four|five|six|eight"
                            + "|einen|eine|ein|zwei|beide|paar|drei|vier|fünf|sechs|acht)"
                            + "(?: of)?\\b");

    /** A bare number counts when a word or two stand between it and something understood. */
    private static final Pattern COUNT =
            Pattern.compile(
                    "(?<![\\d.,\\w])(\\d{1,2}) (?!gauge)(?=(?:[a-z-]+ ){0,2}" + TAKEN + ")");

    private static final Pattern TOTAL =
            Pattern.compile(
                    "\\b(?:in"
                        + " )?(?:total|altogether|combined|together|insgesamt|zusammen|gesamt|summe)\\b");
    private static final Pattern MOMENTARY =
            Pattern.compile(
                    "\\b(?:momentar(?:y|ily)|intermittent(?:ly)?|brief(?:ly)?|push[ -]?button"
                            + "|(?:only )?when pressed|kurzzeitig|kurz|taster|per taster"
                            + "|nur bei betätigung)\\b");
    private static final Pattern CONTINUOUS =
            Pattern.compile(
                    "\\b(?:continuous(?:ly)?|all the time|always on|dauernd|dauerhaft"
                            + "|dauerbetrieb|im dauerbetrieb)(?: duty)?\\b");
    private static final Pattern PERMANENT =
            Pattern.compile(
                    "\\b(?:permanent(?:ly)?|unswitched|always live"
                            + "|(?:straight|direct(?:ly)?) (?:from|to|off) (?:the )?battery)"
                            + "(?: live| feed| power)?\\b"
                            + "|\\b(?:(?:am? )?dauerplus|(?:an )?(?:klemme|kl\\.?) ?30"
                            + "|direkt (?:an|von) (?:der|die) batterie)\\b");
    private static final Pattern SWITCHED =
            Pattern.compile(
                    "\\b(?:switched(?: live| feed| power)?(?: by (?:the )?(?:key|ignition))?"
                            + "|(?:with|on) (?:the )?(?:ignition|key)"
                            + "|ignition (?:on|switched|live|feed)|key on)\\b"
                            + "|\\b(?:zündungsplus|zündplus|schaltplus|geschaltet(?:es plus)?"
                            + "|(?:an )?(?:klemme|kl\\.?) ?15|(?:mit|bei)(?: der)? zündung"
                            + "(?: an)?)\\b");
    private static final Pattern NO_RELAY =
            Pattern.compile("\\b(?:(?:no|without(?: a)?|w/o) relay|(?:ohne|kein) relais)\\b");
    private static final Pattern RELAY =
            Pattern.compile(
                    "\\b(?:(?:with|via|through|on|needs|has|using|over) )?(?:(?:a|its|own|its own)"
                            + " )?relay(?:ed|s)?\\b"
                            + "|(?<!\\p{L})(?:(?:mit|über|per|via) )?(?:(?:ein|einem|eigenem) )?"
                            + "relais\\b");
    private static final Pattern RETURN_BY_WIRE =
            Pattern.compile(
                    "\\b(?:(?:own|separate|its own) )?(?:(?:ground|earth|return) wire|wire return"
                            + "|wired (?:ground|earth|return)|(?:two|2)[ -]wire)\\b"
                            + "|\\b(?:(?:eigene[rs]?|mit) )*(?:masseleitung|massekabel"
                            + "|minusleitung|rückleitung|zweiadrig)\\b");
    private static final Pattern RETURN_BY_CHASSIS =
            Pattern.compile(
                    "\\b(?:(?:chassis|frame) (?:ground|earth|return)|(?:ground|earth)(?:s|ed)?"
                            + " (?:to|on|through|via) (?:the"
                            + " )?(?:frame|chassis))\\b|\\b(?:rahmenmasse|masse (?:am|über(?:"
                            + " den)?|an(?: den)?) rahmen)\\b");
    private static final Pattern COLOUR =
            Pattern.compile(
                    COLOUR_WORDS
                            + "(?:(?:[/ -]| with (?:a )?| and | mit (?:einem )?)"
                            + COLOUR_WORDS
                            + ")?(?: stripe| tracer| streifen)? "
                            + LEAD_WORDS
                            + "|\\b(?:wire|lead|cable|leitung|kabel|kabelfarbe)(?: colour|"
                            + " color)?:?(?: is| in)? "
                            + COLOUR_WORDS
                            + "(?:(?:[/-]| with (?:a )?| mit (?:einem )?)"
                            + COLOUR_WORDS
                            + ")?(?: stripe| tracer| streifen)?(?!\\p{L})");
    private static final Pattern LED = Pattern.compile("\\bleds?\\b");
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\d][\\p{L}\\d'’-]*");

    /** Words that carry nothing by themselves. */
    private static final Set<String> FILLERS =
            setOf(
                    ("a an the my our of at about approx approximately around roughly ca circa each"
                         + " apiece and with is are it its draws drawing takes take uses use using"
                         + " needs need pulls pulling rated max maximum nominal up to run runs away"
                         + " long length cable wire wires wiring lead from block box for via plus"
                         + " also distance i we have has want some on one that which then current"
                         + " power draw consumption route per piece so der die das den dem mein"
                         + " meine unser unsere und ist sind braucht zieht hat von vom zum zur bis"
                         + " etwa ungefähr rund je jeweils maximal nennstrom strom leistung"
                         + " verbrauch länge lang weg entfernt entfernung leitung kabel zuleitung"
                         + " ab aus sicherungskasten für auch ich wir hätte gern gerne möchte"
                         + " brauche brauchen noch dann pro mit stück bitte"));

    /** Words that may follow the name of a load as part of it. */
    private static final Set<String> AFTER_NAME =
            setOf(
                    ("left right front rear back upper lower main aux auxiliary spare inner outer"
                            + " bulb bulbs lamp lamps light lights led leds unit motor module"
                            + " controller links rechts vorne vorn hinten oben unten"));

    private static Set<String> setOf(String words) {
        return Set.of(words.split(" "));
    }

    /** What one load draws, by one of both. */
    private record Amount(OptionalDouble watts, OptionalDouble amps) {
        static final Amount UNKNOWN = new Amount(OptionalDouble.empty(), OptionalDouble.empty());

        static Amount ofWatts(double watts) {
            return new Amount(OptionalDouble.of(watts), OptionalDouble.empty());
        }

        static Amount ofAmps(double amps) {
            return new Amount(OptionalDouble.empty(), OptionalDouble.of(amps));
        }

        Amount dividedBy(int count) {
            return new Amount(divided(watts, count), divided(amps, count));
        }

        private static OptionalDouble divided(OptionalDouble value, int count) {
            return value.isPresent()
                    ? OptionalDouble.of(value.getAsDouble() / count)
                    : OptionalDouble.empty();
        }
    }

    private final String text;
    private final StringBuilder left;

    private WishReader(String text) {
        this.text = text;
        // Letters that grow when they become small would shift all that follows.
        String small = text.toLowerCase(Locale.ROOT);
        this.left = new StringBuilder(small.length() == text.length() ? small : text);
    }

    static Phrase read(String phrase) {
        WishReader reader =
                new WishReader(phrase.substring(0, Math.min(phrase.length(), MOST_CHARACTERS)));
        Optional<Wish> wish = reader.findWish();
        List<Piece> pieces =
                wish.isPresent()
                        ? reader.pieces()
                        : new ArrayList<>(List.of(new Piece(reader.text, false)));
        if (phrase.length() > MOST_CHARACTERS) {
            pieces.add(new Piece(phrase.substring(MOST_CHARACTERS), false));
        }
        return new Phrase(pieces, wish);
    }

    /** Whether the part of a sentence that follows an item speaks of another one. */
    static boolean beginsAnother(String item, String part) {
        return LoadWords.find(part.toLowerCase(Locale.ROOT)).isPresent()
                || hasAmount(part) && hasAmount(item);
    }

    private static boolean hasAmount(String part) {
        WishReader reader = new WishReader(part);
        reader.rating();
        return reader.take(AMOUNT).isPresent();
    }

    /** An amount and nothing else, such as "55 W": its number and "W" or "A". */
    static Optional<List<String>> findAmount(String cell) {
        WishReader reader = new WishReader(cell.strip());
        Optional<Amount> amount = reader.amount().filter(found -> reader.isAllTaken());
        return amount.map(
                found ->
                        found.amps().isPresent()
                                ? List.of(plain(found.amps().getAsDouble()), "A")
                                : List.of(plain(found.watts().getAsDouble()), "W"));
    }

    /** A length and nothing else, such as "6 ft": its metres. */
    static Optional<String> findMetres(String cell) {
        WishReader reader = new WishReader(cell.strip());
        OptionalDouble metres = reader.runM();
        return metres.isPresent() && reader.isAllTaken()
                ? Optional.of(plain(metres.getAsDouble()))
                : Optional.empty();
    }

    private boolean isAllTaken() {
        return left.chars().allMatch(c -> c == TAKEN || c == ' ');
    }

    private static String plain(double number) {
        return new BigDecimal(String.valueOf(number)).stripTrailingZeros().toPlainString();
    }

    private Optional<Wish> findWish() {
        Optional<Found> name = LoadWords.find(left);
        name.ifPresent(found -> takeOut(found.start(), found.end()));
        OptionalDouble ratingA = rating();
        String gauge = gauge();
        int counted = count();
        Optional<Amount> said = amount();
        if (name.isEmpty() && said.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble ratedV = number(take(VOLTS));
        OptionalDouble runM = runM();
        int count = counted > 0 ? counted : Math.max(1, (int) number(take(COUNT)).orElse(1));
        Amount amount = said.orElse(Amount.UNKNOWN).dividedBy(take(TOTAL).isPresent() ? count : 1);
        boolean momentary = take(MOMENTARY).isPresent();
        take(CONTINUOUS);
        String terminal = terminal();
        boolean relay = take(NO_RELAY).isEmpty() && take(RELAY).isPresent();
        String returnPath = returnPath();
        String colour = colour();
        boolean led = LED.matcher(left).find();
        String title = title(name);
        LoadKind kind = kind(name, led);
        if (kind == LoadKind.LED) {
            take(LED);
        }
        takeFillers();
        return Optional.of(
                new Wish(
                        title,
                        kind,
                        name.isPresent() || led,
                        count,
                        amount.watts(),
                        amount.amps(),
                        ratedV,
                        runM,
                        terminal,
                        momentary,
                        relay,
                        returnPath,
                        colour,
                        ratingA,
                        gauge));
    }

    private static LoadKind kind(Optional<Found> name, boolean led) {
        LoadKind named = name.map(Found::kind).orElse(LoadKind.RESISTIVE);
        boolean lamp = named == LoadKind.FILAMENT_LAMP || name.isEmpty();
        return led && lamp ? LoadKind.LED : named;
    }

    private OptionalDouble rating() {
        return RATINGS.stream()
                .map(pattern -> number(take(pattern)))
                .filter(OptionalDouble::isPresent)
                .findFirst()
                .orElse(OptionalDouble.empty());
    }

    private String gauge() {
        Optional<MatchResult> area = take(GAUGE_AREA);
        return area.isPresent()
                ? area.get().group(1).replace(',', '.') + " mm2"
                : take(GAUGE_NUMBER)
                        .map(
                                found ->
                                        found.group(1)
                                                + " "
                                                + found.group(2).toUpperCase(Locale.ROOT))
                        .orElse("");
    }

    /** 0 when none was said. */
    private int count() {
        OptionalDouble times = number(take(TIMES));
        return times.isPresent()
                ? (int) times.getAsDouble()
                : take(COUNT_WORD).map(found -> COUNTS.get(found.group(1))).orElse(0);
    }

    private Optional<Amount> amount() {
        Optional<MatchResult> two = take(TWO_WATTS);
        if (two.isPresent()) {
            // Two filaments of which one burns: the stronger one counts.
            double watts =
                    Math.max(number(two.get().group(1)), Double.parseDouble(two.get().group(2)));
            return Optional.of(Amount.ofWatts(watts));
        }
        return take(AMOUNT).map(found -> amount(number(found.group(1)), found.group(2)));
    }

    private static Amount amount(double number, String unit) {
        return switch (unit.charAt(0)) {
            case 'k' -> Amount.ofWatts(number * 1000);
            case 'w' -> Amount.ofWatts(number);
            case 'm' -> Amount.ofAmps(number / 1000);
            default -> Amount.ofAmps(number);
        };
    }

    private OptionalDouble runM() {
        Optional<MatchResult> both = take(FEET_AND_INCHES);
        if (both.isPresent()) {
            double feet = Double.parseDouble(both.get().group(1));
            double inches = Double.parseDouble(both.get().group(2));
            return metres(feet * METRES.get(2) + inches * METRES.get(3));
        }
        Optional<MatchResult> found = take(LENGTH);
        return found.isEmpty()
                ? OptionalDouble.empty()
                : metres(number(found.get().group(1)) * METRES.get(unitOf(found.get())));
    }

    private static int unitOf(MatchResult length) {
        int unit = 0;
        while (length.group(unit + 2) == null) {
            unit++;
        }
        return unit;
    }

    /** To the millimetre: nobody measures a run more closely. */
    private static OptionalDouble metres(double metres) {
        return OptionalDouble.of(Math.rint(metres * 1000) / 1000);
    }

    private String terminal() {
        return take(PERMANENT).isPresent() ? "30" : take(SWITCHED).isPresent() ? "15" : "";
    }

    private String returnPath() {
        return take(RETURN_BY_WIRE).isPresent()
                ? "wire"
                : take(RETURN_BY_CHASSIS).isPresent() ? "chassis" : "";
    }

    private String colour() {
        return take(COLOUR)
                .map(
                        found -> {
                            int first = found.group(1) == null ? 3 : 1;
                            String base = colourCode(found.group(first));
                            String word = found.group(first + 1);
                            String stripe = word == null ? base : colourCode(word);
                            return stripe.equals(base) ? base : base + stripe;
                        })
                .orElse("");
    }

    private static String colourCode(String word) {
        String usual =
                switch (word) {
                    case "purple", "violett", "lila" -> "violet";
                    case "gray", "grau" -> "grey";
                    case "schwarz" -> "black";
                    case "braun" -> "brown";
                    case "rot" -> "red";
                    case "gelb" -> "yellow";
                    case "grün" -> "green";
                    case "blau" -> "blue";
                    case "weiß", "weiss" -> "white";
                    case "rosa" -> "pink";
                    case "türkis" -> "turquoise";
                    default -> word;
                };
        return WireColour.findByWord(usual).orElseThrow().code();
    }

    /** The name with the words that go with it; without a name the first words that are left. */
    private String title(Optional<Found> name) {
        int start = name.map(Found::start).orElse(-1);
        int end = name.map(Found::end).orElse(-1);
        List<MatchResult> words = WORD.matcher(left).results().toList();
        if (name.isEmpty()) {
            for (MatchResult word : words) {
                boolean follows = end < 0 || left.substring(end, word.start()).equals(" ");
                if (!FILLERS.contains(word.group()) && follows) {
                    start = start < 0 ? word.start() : start;
                    end = word.end();
                }
            }
            if (start < 0) {
                return "";
            }
        } else {
            for (MatchResult word : words.reversed()) {
                boolean hyphened = word.end() == start && word.group().endsWith("-");
                boolean before = word.end() == start - 1 && isGap(text.charAt(word.end()));
                if ((before || hyphened)
                        && !FILLERS.contains(word.group())
                        && !Character.isDigit(word.group().charAt(0))) {
                    start = word.start();
                }
            }
            for (MatchResult word : words) {
                if (word.start() == end + 1
                        && AFTER_NAME.contains(word.group())
                        && isGap(text.charAt(end))) {
                    end = word.end();
                }
            }
        }
        takeOut(start, end);
        String title = text.substring(start, Math.min(end, start + LONGEST_TITLE));
        return title.substring(0, 1).toUpperCase(Locale.ROOT) + title.substring(1);
    }

    private static boolean isGap(char c) {
        return c == ' ' || c == '-' || c == '\'';
    }

    private void takeFillers() {
        for (MatchResult word : WORD.matcher(left).results().toList()) {
            if (FILLERS.contains(word.group())) {
                takeOut(word.start(), word.end());
            }
        }
    }

    /** The phrase cut where understanding begins and ends; signs between words go with either. */
    private List<Piece> pieces() {
        List<Piece> pieces = new ArrayList<>();
        int done = 0;
        Matcher words =
                Pattern.compile("[^\\s" + TAKEN + "]*[\\p{L}\\p{N}][^" + TAKEN + "]*")
                        .matcher(left);
        while (words.find()) {
            int end =
                    words.start()
                            + left.substring(words.start(), words.end()).stripTrailing().length();
            if (words.start() > done) {
                pieces.add(new Piece(text.substring(done, words.start()), true));
            }
            pieces.add(new Piece(text.substring(words.start(), end), false));
            done = end;
        }
        if (done < text.length()) {
            pieces.add(new Piece(text.substring(done), true));
        }
        return pieces;
    }

    /** The first place where a pattern fits, taken out of what is left. */
    private Optional<MatchResult> take(Pattern pattern) {
        Matcher matcher = pattern.matcher(left);
        if (!matcher.find()) {
            return Optional.empty();
        }
        MatchResult found = matcher.toMatchResult();
        takeOut(found.start(), found.end());
        return Optional.of(found);
    }

    private void takeOut(int start, int end) {
        for (int i = start; i < end; i++) {
            left.setCharAt(i, TAKEN);
        }
    }

    /** The number in whichever group of a pattern's alternatives has one. */
    private static OptionalDouble number(Optional<MatchResult> found) {
        if (found.isPresent()) {
            for (int group = 1; group <= found.get().groupCount(); group++) {
                if (found.get().group(group) != null) {
                    return OptionalDouble.of(number(found.get().group(group)));
                }
            }
        }
        return OptionalDouble.empty();
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
