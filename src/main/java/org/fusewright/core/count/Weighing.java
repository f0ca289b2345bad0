package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.WeightStatement.OnScale;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What a scale showed for a bag, judged.
 *
 * @param onScale the lines that lay on the scale
 * @param offScale parts that were counted by hand and left off
 * @param netG what it showed for the bag's content
 * @param differenceG that less the expected mass
 * @param candidates parts of which one piece, too few or too many, would explain the difference
 */
public record Weighing(
        WeighingTerms terms,
        double tareG,
        double grossG,
        OnScale onScale,
        List<PartNumber> offScale,
        double netG,
        double differenceG,
        Outcome outcome,
        List<PartNumber> candidates) {

    /** What a weighing says. */
    public enum Outcome {
        /** Within the tolerance, on a scale that sees the lightest piece. */
        AGREES("agrees"),
        /** Within the tolerance, on a scale that does not see the lightest piece. */
        CANNOT_TELL("cannot-tell"),
        TOO_LIGHT("too-light"),
        TOO_HEAVY("too-heavy");

        private final String code;

        Outcome(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    public Weighing {
        offScale = List.copyOf(offScale);
        candidates = List.copyOf(candidates);
    }

    /**
     * Judges a reading.
     *
     * @param lines the whole bag as it should be
     * @param offScale parts of it that were left off the scale
     * @throws IllegalArgumentException when nothing of the bag lay on the scale
     */
    public static Weighing judge(
            List<ExpectedLine> lines,
            Collection<PartNumber> offScale,
            Reading reading,
            WeighingTerms terms) {
        List<ExpectedLine> weighed =
                lines.stream().filter(line -> !offScale.contains(line.part())).toList();
        if (weighed.isEmpty()) {
            throw new IllegalArgumentException("nothing of the bag lay on the scale");
        }
        OnScale onScale = OnScale.of(weighed, terms);
        double netG = reading.grossG() - reading.tareG();
        double differenceG = netG - onScale.mass().meanG();
        double halfStepG = terms.resolutionG() / 2;
        Outcome outcome =
                netG < onScale.lowestG() - halfStepG
                        ? Outcome.TOO_LIGHT
                        : netG > onScale.highestG() + halfStepG
                                ? Outcome.TOO_HEAVY
                                : onScale.visible() ? Outcome.AGREES : Outcome.CANNOT_TELL;
        boolean off = outcome == Outcome.TOO_LIGHT || outcome == Outcome.TOO_HEAVY;
        return new Weighing(
                terms,
                reading.tareG(),
                reading.grossG(),
                onScale,
                lines.stream()
                        .map(ExpectedLine::part)
                        .filter(offScale::contains)
                        .distinct()
                        .toList(),
                netG,
                differenceG,
                outcome,
                off ? candidates(onScale, Math.abs(differenceG), terms) : List.of());
    }

    /** What the scale showed for the empty bag and for the full one. */
    public record Reading(double tareG, double grossG) {

        public Reading {
            if (!(tareG >= 0 && grossG >= tareG) || !Double.isFinite(grossG)) {
                throw new IllegalArgumentException("a full bag weighs no less than an empty one");
            }
        }
    }

    private static List<PartNumber> candidates(OnScale onScale, double offG, WeighingTerms terms) {
        double chanceG = onScale.mass().offExceededBy(terms.errorProbability());
        return onScale.lines().stream()
                .filter(line -> Math.abs(eachG(line) - offG) <= chanceG)
                .sorted(Comparator.comparingDouble(line -> Math.abs(eachG(line) - offG)))
                .map(ExpectedLine::part)
                .distinct()
                .toList();
    }

    private static double eachG(ExpectedLine line) {
        return line.masses().totalG() / line.quantity().doubleValue();
    }

    /** The outcome in shop language. */
    public Text sentence() {
        Text said =
                Phrase.of(
                        "weighing." + outcome.code(),
                        terms.shown(netG),
                        terms.shown(onScale.lowestG()).bare(),
                        terms.shown(onScale.highestG()),
                        onScale.lightest().part(),
                        WeightStatement.grams(onScale.lightestG()));
        return switch (outcome) {
            case AGREES, CANNOT_TELL -> said;
            case TOO_LIGHT -> Text.sentences(List.of(said, explained("weighing.too-few")));
            case TOO_HEAVY -> Text.sentences(List.of(said, explained("weighing.too-many")));
        };
    }

    private Text explained(String key) {
        return candidates.isEmpty()
                ? Phrase.of("weighing.unexplained")
                : Phrase.of(
                        key,
                        candidates.stream()
                                .map(PartNumber::value)
                                .collect(Collectors.joining(", ")));
    }
}
