package org.fusewright.jobs.load;

import org.fusewright.core.job.LoadKind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a customer wrote ("headlight 55W, 2m; horn 4A momentary"), read as wishes for circuits.
 *
 * <p>Each phrase is kept as written, with what was not understood told apart; nothing is dropped.
 * The words are those of English and German mails, mixed as they come; the figures may have a
 * decimal comma. What one wish means for a job is left to whoever confirms it.
 *
 * @param unread characters at the end that were too many to read
 */
public record CustomerText(List<Phrase> phrases, int unread) {
    /** A part of a phrase. */
    public record Piece(String text, boolean understood) {}

    /**
     * @param pieces all of its text in order
     * @param wish empty when it asks for no circuit
     */
    public record Phrase(List<Piece> pieces, Optional<Wish> wish) {
        public Phrase {
            pieces = List.copyOf(pieces);
        }

        /** The phrase as written. */
        public String text() {
            return pieces.stream().map(Piece::text).collect(Collectors.joining());
        }

        /** What of it was not understood. */
        public List<String> notUnderstood() {
            return pieces.stream()
                    .filter(piece -> !piece.understood())
                    .map(piece -> piece.text().strip())
                    .toList();
        }
    }

    /**
     * A wish for one circuit. What was not said is empty.
     *
     * @param kindSaid whether a word names the kind; else it is taken as a resistor
     * @param watts of one load
     * @param amps of one load
     * @param runM length in metres
     * @param terminal "30" for permanent current, "15" for switched
     * @param returnPath "wire" or "chassis"
     * @param colour of the lead, by IEC 60757
     * @param ratingA rating of the fuse or breaker that was asked for
     */
    public record Wish(
            String title,
            LoadKind kind,
            boolean kindSaid,
            int count,
            OptionalDouble watts,
            OptionalDouble amps,
            OptionalDouble ratedV,
            OptionalDouble runM,
            String terminal,
            boolean momentary,
            boolean relay,
            String returnPath,
            String colour,
            OptionalDouble ratingA,
            String gauge) {}

    static final int MAX_CHARACTERS = 20_000;
    static final int MAX_PHRASES = 200;

    /** Where a phrase ends for sure; a full stop inside a number ends nothing. */
    private static final Pattern ENDS = Pattern.compile("[\\r\\n;•]|[.!?](?=\\s|$)");

    /** Where one may end; a comma inside a number is a decimal one. */
    private static final Pattern JOINTS =
            Pattern.compile("(?i),(?!\\d)|(?<!\\d),|\\t|\\s(?:and|plus|und|sowie|&|\\+)(?=\\s)");

    private static final Pattern JOINT_BEFORE =
            Pattern.compile("(?i)^(?:\\s*,|\\s+(?:and|plus|und|sowie|&|\\+)(?=\\s)|\\t)+");

    public CustomerText {
        phrases = List.copyOf(phrases);
    }

    /** Reads any text at all. */
    public static CustomerText read(String text) {
        String read = text.substring(0, Math.min(text.length(), MAX_CHARACTERS));
        List<Phrase> phrases = new ArrayList<>();
        int start = 0;
        Matcher ends = ENDS.matcher(read);
        while (start < read.length() && phrases.size() < MAX_PHRASES) {
            boolean found = ends.find();
            listItems(read.substring(start, found ? ends.start() : read.length())).stream()
                    .filter(item -> !item.isBlank())
                    .map(WishReader::read)
                    .forEach(phrases::add);
            start = found ? ends.end() : read.length();
        }
        return new CustomerText(phrases, text.length() - start);
    }

    /** The things that a sentence lists; what only tells more of a thing stays with it. */
    private static List<String> listItems(String sentence) {
        List<String> items = new ArrayList<>();
        Matcher joints = JOINTS.matcher(sentence);
        int start = 0;
        int end = 0;
        boolean more = true;
        while (more) {
            more = joints.find();
            int next = more ? joints.start() : sentence.length();
            if (end > start
                    && WishReader.beginsAnother(
                            sentence.substring(start, end), sentence.substring(end, next))) {
                items.add(sentence.substring(start, end));
                start = end;
            }
            end = next;
        }
        items.add(sentence.substring(start, end));
        return items.stream().map(CustomerText::withoutJoint).toList();
    }

    private static String withoutJoint(String item) {
        return JOINT_BEFORE.matcher(item).replaceFirst("").replaceFirst("[,\\s]+$", "").strip();
    }
}
