package org.fusewright.core.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Finds the text again that an English sentence was said from. Kept documents hold sentences in
 * English; their readers have other languages.
 *
 * <p>What is found says the very same in English; what is not found is said as it stands.
 */
public final class Recall {
    private static final Pattern AMOUNT =
            Pattern.compile("(-?\\d{1,9}(?:\\.(\\d{1,6}))?)(?: (A|V|W|mm2|mm|m|g|%|C|ms|s|h))?");
    private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.!?]) ");
    private static final int FEWEST_LETTERS = 4;

    /** What the names of texts on papers begin with: no document keeps such a text. */
    private static final String ON_PAPER = "print.";

    private static final String PLACES = "place.";

    /** The texts of the bundle, those with most letters of their own first. */
    private static final List<Known> KNOWN =
            Language.ENGLISH.keys().stream()
                    .filter(key -> !key.startsWith(ON_PAPER))
                    .map(Known::of)
                    .sorted(Comparator.comparingInt(Known::letters).reversed())
                    .toList();

    /** The families asked for: a page asks for hundreds of texts of the same one. */
    private static final Map<String, List<Known>> FAMILIES = new ConcurrentHashMap<>();

    private record Known(
            String key, Template template, int letters, String longest, Pattern pattern) {

        static Known of(String key) {
            Template template = Language.ENGLISH.template(key);
            StringBuilder pattern = new StringBuilder();
            String longest = "";
            int letters = 0;
            for (int piece = 0; piece < template.pieces(); piece++) {
                String literal = template.literal(piece).toString();
                pattern.append(piece == 0 ? "" : "(.+?)").append(Pattern.quote(literal));
                longest = literal.length() > longest.length() ? literal : longest;
                letters += (int) literal.chars().filter(Character::isLetter).count();
            }
            return new Known(key, template, letters, longest, Pattern.compile(pattern.toString()));
        }

        Optional<Text> match(String english, Function<String, Text> value) {
            if (!english.contains(longest)) {
                return Optional.empty();
            }
            Matcher matcher = pattern.matcher(english);
            if (!matcher.matches()) {
                return Optional.empty();
            }
            List<Object> values = new ArrayList<>();
            for (int piece = 0; piece < template.pieces() - 1; piece++) {
                int slot = template.slotAfter(piece);
                while (values.size() <= slot) {
                    values.add("");
                }
                values.set(slot, value.apply(matcher.group(piece + 1)));
            }
            Text found = new Phrase(key, values);
            return found.english().equals(english) ? Optional.of(found) : Optional.empty();
        }
    }

    private Recall() {}

    /** A text of which nothing is known but that it is one of the bundle's. */
    public static Text of(String english) {
        return find(english)
                .orElseGet(
                        () ->
                                Text.sentences(
                                        Stream.of(SENTENCE_END.split(english))
                                                .map(one -> find(one).orElse(Text.verbatim(one)))
                                                .toList()));
    }

    /**
     * A text of a family.
     *
     * @param family what the names of its texts begin with, such as "quote.gap."
     */
    public static Text of(String english, String family) {
        return inFamily(family, english, Recall::value);
    }

    private static List<Known> listFamily(String family) {
        return KNOWN.stream().filter(known -> known.key.startsWith(family)).toList();
    }

    /** A place of a loom or a kit: what is named in it is a name and nothing else. */
    public static Text place(String english) {
        return inFamily(PLACES, english, Text::verbatim);
    }

    /** Places with commas between them. */
    public static Text places(List<String> english) {
        return Text.listed(english.stream().map(Recall::place).toList());
    }

    /**
     * @param value what stands for a part of the sentence that is not the text's own
     */
    private static Text inFamily(String family, String english, Function<String, Text> value) {
        for (Known known : FAMILIES.computeIfAbsent(family, Recall::listFamily)) {
            Optional<Text> found = known.match(english, value);
            if (found.isPresent()) {
                return found.get();
            }
        }
        return Text.verbatim(english);
    }

    private static Optional<Text> find(String english) {
        return KNOWN.stream()
                .takeWhile(known -> known.letters >= FEWEST_LETTERS)
                .flatMap(known -> known.match(english, Recall::value).stream())
                .findFirst();
    }

    private static Text value(String said) {
        Matcher amount = AMOUNT.matcher(said);
        if (amount.matches()) {
            Text found = amount(amount);
            return found.english().equals(said) ? found : Text.verbatim(said);
        }
        return said.indexOf(' ') < 0
                ? Text.verbatim(said)
                : find(said).orElseGet(() -> Text.verbatim(said));
    }

    private static Amount amount(Matcher said) {
        double value = Double.parseDouble(said.group(1));
        int decimals = said.group(2) == null ? 0 : said.group(2).length();
        return switch (said.group(3) == null ? "" : said.group(3)) {
            case "ms" -> Amount.seconds(value / 1000);
            case "h" -> Amount.seconds(value * 3600);
            case String sign -> new Amount(value, Unit.find(sign).orElseThrow(), decimals);
        };
    }
}
