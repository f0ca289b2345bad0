package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.words.Exact;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

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
    public List<Text> sentences() {
        List<Text> sentences = new ArrayList<>();
        sentences.add(
                Phrase.of(
                        "weight.whole-bag",
                        grams(all.mass().meanG()),
                        percent(1 - terms.errorProbability()),
                        grams(all.mass().offExceededBy(terms.errorProbability() / 2))));
        sentences.add(Phrase.of("weight.lightest", all.lightest().part(), grams(all.lightestG())));
        if (all.visible()) {
            sentences.add(withMarks("weight.sees", all));
        } else {
            sentences.add(
                    Phrase.of(
                            "weight.does-not-see",
                            grams(terms.resolutionG()),
                            percent(all.chanceOfMiss())));
            sentences.add(
                    rest.map(this::byHandInWords).orElseGet(() -> Phrase.of("weight.sees-none")));
        }
        sentences.add(Phrase.of("weight.never-tells"));
        return List.copyOf(sentences);
    }

    private Text byHandInWords(OnScale onScale) {
        Text byHandFirst =
                Phrase.of(
                        "weight.by-hand",
                        byHand.stream()
                                .map(line -> line.part().value())
                                .collect(Collectors.joining(", ")));
        return Text.sentences(
                List.of(
                        byHandFirst,
                        withMarks(
                                "weight.rest",
                                onScale,
                                grams(onScale.mass().meanG()),
                                onScale.lightest().part(),
                                grams(onScale.lightestG()))));
    }

    /** A sentence that ends with what the scale must show, and how often it errs. */
    private Text withMarks(String key, OnScale onScale, Object... values) {
        List<Object> all = new ArrayList<>(List.of(values));
        all.add(terms.shown(onScale.lowestG()).bare());
        all.add(terms.shown(onScale.highestG()));
        return Text.sentences(
                List.of(
                        Phrase.of(key, all.toArray()),
                        Phrase.of(
                                "weight.errors",
                                percent(onScale.chanceOfAlarm()),
                                percent(onScale.chanceOfMiss()))));
    }

    static Text grams(double massG) {
        return rounded(massG, massG >= 1000 ? 5 : massG >= 1 ? 4 : 2, Unit.GRAM);
    }

    private static Text percent(double share) {
        return share < 0.0001
                ? Phrase.of("weight.less-than", new Exact(new BigDecimal("0.01"), Unit.PERCENT))
                : rounded(share * 100, share > 0.9 ? 4 : 2, Unit.PERCENT);
    }

    private static Text rounded(double value, int digits, Unit unit) {
        BigDecimal figure = new BigDecimal(value).round(new MathContext(digits));
        BigDecimal plain = figure.signum() == 0 ? BigDecimal.ZERO : figure.stripTrailingZeros();
        return new Exact(plain.setScale(Math.max(0, plain.scale())), unit);
    }
}
