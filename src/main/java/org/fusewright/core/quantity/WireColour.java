package org.fusewright.core.quantity;

import java.util.List;
import java.util.Optional;

/**
 * The colour of a lead by the letter codes of IEC 60757 (values from memory): a base colour, and a
 * stripe where a second code follows, so that "RDBK" is red with a black stripe.
 */
public record WireColour(String code) implements Comparable<WireColour> {

    /** The single colours of IEC 60757, without the metallic ones that no insulation has. */
    public static final List<String> CODES =
            List.of("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ");

    private static final List<String> WORDS =
            List.of(
                    "black",
                    "brown",
                    "red",
                    "orange",
                    "yellow",
                    "green",
                    "blue",
                    "violet",
                    "grey",
                    "white",
                    "pink",
                    "turquoise");

    public WireColour {
        boolean single = code.length() == 2 && CODES.contains(code);
        boolean striped =
                code.length() == 4
                        && CODES.contains(code.substring(0, 2))
                        && CODES.contains(code.substring(2))
                        && !code.startsWith(code.substring(2));
        if (!single && !striped) {
            throw new IllegalArgumentException("not an IEC 60757 colour or stripe: " + code);
        }
    }

    /** Reads a code such as "VT" or "RDBK"; empty when it is none. */
    public static Optional<WireColour> parse(String code) {
        try {
            return Optional.of(new WireColour(code));
        } catch (IllegalArgumentException notAColour) {
            return Optional.empty();
        }
    }

    /** The single colour of a word such as "violet"; empty for another word. */
    public static Optional<WireColour> findByWord(String word) {
        int at = WORDS.indexOf(word);
        return at < 0 ? Optional.empty() : Optional.of(new WireColour(CODES.get(at)));
    }

    /** The colour without its stripe. */
    public WireColour base() {
        return code.length() == 2 ? this : new WireColour(code.substring(0, 2));
    }

    public Optional<WireColour> stripe() {
        return code.length() == 2
                ? Optional.empty()
                : Optional.of(new WireColour(code.substring(2)));
    }

    /** "violet", or "red/black" for red with a black stripe. */
    public String inWords() {
        String base = WORDS.get(CODES.indexOf(code.substring(0, 2)));
        return stripe().map(stripe -> base + "/" + stripe.inWords()).orElse(base);
    }

    @Override
    public int compareTo(WireColour other) {
        return code.compareTo(other.code);
    }

    @Override
    public String toString() {
        return code;
    }
}
