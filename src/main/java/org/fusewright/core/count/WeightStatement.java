package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Whether a scale can see that the lightest part is missing, and what to count by hand if not.
 *
 * <p>A bag passes when the scale shows it within half of its lightest piece around the expected
 * mass. The scale sees that piece when, within the terms, neither a complete bag is called too
 * light nor one without that piece is passed, nor the same for a piece too many. No weighing tells
 * apart one piece too many and another one of like mass too few, nor what lies in a closed set.
 *
 * @param all every line, on the scale together
 * @param byHand the fewest lines to count by hand and leave off the scale so that it sees every
 *     piece of the rest, wherever its steps lie; of equally few, those that weigh least of what was
 *     looked at. Empty when the scale sees all; every line when it sees no single one
 * @param rest what then stays on the scale; empty when nothing does
 */
public record WeightStatement(
        WeighingTerms terms, OnScale all, List<ExpectedLine> byHand, Optional<OnScale> rest) {

    /**
     * Some lines on a scale.
     *
     * @param lightest a line with the lightest single piece
     * @param lowestG the least that the scale may show for a bag to pass
     * @param highestG the most
     * @param chanceOfAlarm that a complete bag is shown below the lowest, or above the highest:
     *     whichever is likelier
     * @param chanceOfMiss that a bag with one lightest piece too few, or too many, passes:
     *     whichever is likelier
     */
    public record OnScale(
            List<ExpectedLine> lines,
            NetMass mass,
            ExpectedLine lightest,
            double lowestG,
            double highestG,
            double chanceOfAlarm,
            double chanceOfMiss,
            boolean visible) {

        public OnScale {
            lines = List.copyOf(lines);
        }

        static OnScale of(List<ExpectedLine> lines, WeighingTerms terms) {
            ExpectedLine lightest = lines.stream().min(byLightness(terms)).orElseThrow();
            NetMass mass = terms.massOf(lines);
            double pieceG = lightest.masses().lightestG();
            OnScale halfway = withMarks(lines, mass, lightest, pieceG / 2, terms);
            // Where the piece is not seen, the marks still tell what chance does not explain.
            return halfway.visible()
                    ? halfway
                    : withMarks(
                            lines,
                            mass,
                            lightest,
                            mass.offExceededBy(terms.errorProbability()),
                            terms);
        }

        private static OnScale withMarks(
                List<ExpectedLine> lines,
                NetMass mass,
                ExpectedLine lightest,
                double offG,
                WeighingTerms terms) {
            double d = terms.resolutionG();
            double lowestG = Math.rint((mass.meanG() - offG) / d + 0.5) * d;
            double highestG = Math.rint((mass.meanG() + offG) / d - 0.5) * d;
            double pieceG = lightest.masses().lightestG();
            NetMass less = terms.massOf(lines, lightest, -pieceG);
            NetMass more = terms.massOf(lines, lightest, pieceG);
            double alarm =
                    Math.max(
                            mass.chanceShownBelow(lowestG),
                            1 - mass.chanceShownBelow(highestG + d));
            double miss =
                    Math.max(
                            1 - less.chanceShownBelow(lowestG),
                            more.chanceShownBelow(highestG + d));
            return new OnScale(
                    lines,
                    mass,
                    lightest,
                    lowestG,
                    highestG,
                    alarm,
                    miss,
                    Math.max(alarm, miss) <= terms.errorProbability());
        }

        public double lightestG() {
            return lightest.masses().lightestG();
        }

        public double chanceOfError() {
            return Math.max(chanceOfAlarm, chanceOfMiss);
        }
    }

    public WeightStatement {
        byHand = List.copyOf(byHand);
    }

    /**
     * @throws IllegalArgumentException when there is nothing to weigh
     */
    public static WeightStatement of(List<ExpectedLine> lines, WeighingTerms terms) {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("there is nothing to weigh");
        }
        OnScale all = OnScale.of(lines, terms);
        if (all.visible()) {
            return new WeightStatement(terms, all, List.of(), Optional.of(all));
        }
        List<ExpectedLine> byLightness = lines.stream().sorted(byLightness(terms)).toList();
        List<ExpectedLine> best = List.of();
        for (int from = 0; from < lines.size(); from++) {
            List<ExpectedLine> seen =
                    mostSeen(byLightness.subList(from, byLightness.size()), terms);
            boolean better =
                    seen.size() > best.size()
                            || (seen.size() == best.size() && totalG(seen) > totalG(best));
            best = better ? seen : best;
        }
        Set<PartNumber> onScale = best.stream().map(ExpectedLine::part).collect(Collectors.toSet());
        List<ExpectedLine> kept =
                lines.stream().filter(line -> onScale.contains(line.part())).toList();
        return new WeightStatement(
                terms,
                all,
                lines.stream().filter(line -> !onScale.contains(line.part())).toList(),
                kept.isEmpty() ? Optional.empty() : Optional.of(OnScale.of(kept, terms)));
    }

    /** The lightest piece first; of equal ones, the one that scatters more. */
    private static Comparator<ExpectedLine> byLightness(WeighingTerms terms) {
        return Comparator.comparingDouble((ExpectedLine line) -> line.masses().lightestG())
                .thenComparingDouble(line -> -terms.extraVarianceG2(line));
    }

    /**
     * The most of these lines of which a piece of the first, lightest one is seen, that one among
     * them. More scatter only makes it worse, so the others are added by their scatter.
     */
    private static List<ExpectedLine> mostSeen(List<ExpectedLine> lines, WeighingTerms terms) {
        ExpectedLine lightest = lines.getFirst();
        List<ExpectedLine> seen = new ArrayList<>();
        if (!isSeen(List.of(lightest), lightest, terms)) {
            return seen;
        }
        seen.add(lightest);
        List<ExpectedLine> others =
                lines.stream()
                        .skip(1)
                        .sorted(Comparator.comparingDouble(terms::varianceG2))
                        .toList();
        for (ExpectedLine line : others) {
            seen.add(line);
            if (!isSeen(seen, lightest, terms)) {
                seen.removeLast();
                break;
            }
        }
        return seen;
    }

    /** Whether the scale sees a piece, too few or too many, wherever its steps lie. */
    private static boolean isSeen(
            List<ExpectedLine> lines, ExpectedLine lightest, WeighingTerms terms) {
        double pieceG = lightest.masses().lightestG();
        return terms.massOf(lines, lightest, pieceG).chanceOff(pieceG / 2)
                <= terms.errorProbability();
    }

    private static double totalG(List<ExpectedLine> lines) {
        return lines.stream().mapToDouble(line -> line.masses().totalG()).sum();
    }

    /** Everything in shop language, a sentence each. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        sentences.add(
                "The whole bag should weigh "
                        + grams(all.mass().meanG())
                        + " g without the empty bag; "
                        + percent(1 - terms.errorProbability())
                        + " of complete bags lie within "
                        + grams(all.mass().offExceededBy(terms.errorProbability() / 2))
                        + " g of that.");
        sentences.add(
                "Its lightest piece is "
                        + all.lightest().part()
                        + " with "
                        + grams(all.lightestG())
                        + " g.");
        if (all.visible()) {
            sentences.add("This scale sees it when it is missing: " + marks(all));
        } else {
            sentences.add(
                    "This scale, with steps of "
                            + grams(terms.resolutionG())
                            + " g, does not see it: a bag without it would pass in "
                            + percent(all.chanceOfMiss())
                            + " of cases.");
            sentences.add(
                    rest.map(this::byHandInWords)
                            .orElse(
                                    "It sees no single line well enough either: count everything"
                                            + " by hand."));
        }
        sentences.add(
                "A weight never tells which part is missing, nor one too many from another of like"
                        + " mass too few.");
        return List.copyOf(sentences);
    }

    private String byHandInWords(OnScale onScale) {
        return "Count by hand and leave off the scale: "
                + listed(byHand)
                + ". The rest should weigh "
                + grams(onScale.mass().meanG())
                + " g; its lightest piece is "
                + onScale.lightest().part()
                + " with "
                + grams(onScale.lightestG())
                + " g, and the scale sees that: "
                + marks(onScale);
    }

    private String marks(OnScale onScale) {
        return "it must show "
                + shown(onScale.lowestG())
                + " to "
                + shown(onScale.highestG())
                + " g. Of complete bags "
                + percent(onScale.chanceOfAlarm())
                + " are called too light, of bags without it "
                + percent(onScale.chanceOfMiss())
                + " pass.";
    }

    /** A mass as the scale shows it: whole steps. */
    private String shown(double massG) {
        return terms.shown(massG);
    }

    private static String listed(List<ExpectedLine> lines) {
        return lines.stream().map(line -> line.part().value()).collect(Collectors.joining(", "));
    }

    static String grams(double massG) {
        return rounded(massG, massG >= 1000 ? 5 : massG >= 1 ? 4 : 2);
    }

    private static String percent(double share) {
        return share < 0.0001
                ? "less than 0.01 %"
                : rounded(share * 100, share > 0.9 ? 4 : 2) + " %";
    }

    private static String rounded(double value, int digits) {
        BigDecimal figure = new BigDecimal(value).round(new MathContext(digits));
        return figure.signum() == 0 ? "0" : figure.stripTrailingZeros().toPlainString();
    }
}
