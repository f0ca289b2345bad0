package org.fusewright.counts.web;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.BagDifference;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.CountRecord.Later;
import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.ExpectedLine;
import org.fusewright.core.count.WeighingTerms;
import org.fusewright.core.count.WeightStatement;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Recall;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.fusewright.counts.BagCount;
import org.fusewright.counts.PossibleSubstitute;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the page of one count shows.
 *
 * @param by who counts at this screen
 * @param notice what became of the last thing done
 * @param statement what a scale can tell, when it was asked
 */
public record CountView(
        BagCount count,
        Comparison comparison,
        List<PossibleSubstitute> possible,
        Optional<Later> later,
        String by,
        Optional<Notice> notice,
        Optional<WeightStatement> statement) {

    private static final int MOST_PLACES = 8;

    /**
     * A word to the person.
     *
     * @param verdict "pass", "caution" or "fail", which colours it
     */
    public record Notice(String verdict, String text) {}

    static CountView of(
            BagCount count, List<PossibleSubstitute> possible, Optional<Later> later, String by) {
        return new CountView(
                count, count.compare(), possible, later, by, Optional.empty(), Optional.empty());
    }

    CountView withNotice(Notice word) {
        return new CountView(count, comparison, possible, later, by, Optional.of(word), statement);
    }

    CountView withStatement(WeightStatement stated) {
        return new CountView(count, comparison, possible, later, by, notice, Optional.of(stated));
    }

    public long completeLines() {
        return comparison.lines().stream()
                .filter(line -> line.state() == Comparison.State.COMPLETE)
                .count();
    }

    /** The state of a line as a sign and words. */
    public static String state(LineResult line) {
        return switch (line.state()) {
            case COMPLETE -> Words.say("counts.state.complete");
            case SHORT -> Words.say("counts.state.short", plain(line.difference().abs()));
            case OVER -> Words.say("counts.state.over", plain(line.difference()));
        };
    }

    /** A verdict's class for a line: one that is short is not wrong while somebody counts. */
    public static String verdict(LineResult line, boolean open) {
        return switch (line.state()) {
            case COMPLETE -> "pass";
            case SHORT -> open ? "open" : "fail";
            case OVER -> "fail";
        };
    }

    public static String plain(BigDecimal value) {
        return Figures.plain(value);
    }

    /** "6", "3 leads". */
    public static String quantity(BigDecimal quantity, String unit) {
        String number = plain(quantity);
        return switch (unit) {
            case ExpectedLine.EACH -> number;
            case ExpectedLine.LEADS ->
                    Words.say(Phrase.counted("counts.leads", quantity.longValue()));
            default -> number + " " + unit;
        };
    }

    /** The kinds of part in this bag, in the order of its lines. */
    public List<CountedKind> kinds() {
        return count.expected().stream().map(ExpectedLine::kind).distinct().toList();
    }

    /** The scatters that are not the usual ones, such as "seal 2.5 %"; empty when all are. */
    public static List<Text> ownScatters(WeighingTerms terms) {
        return Stream.of(CountedKind.values())
                .filter(kind -> terms.scatter().get(kind) != kind.usualScatter())
                .<Text>map(
                        kind ->
                                Phrase.of(
                                        "counts.scatter-of",
                                        Phrase.of("counted-kind." + kind.code()),
                                        new Amount(
                                                terms.scatter().get(kind) * 100, Unit.PERCENT, 4)))
                .toList();
    }

    /** A share as percent, as it is typed: "1.5". */
    public static String percent(double share) {
        return Words.wording().figure(share * 100, 4);
    }

    /** The first places, and how many there are beyond. */
    public static String places(ExpectedLine line) {
        List<String> places = line.places();
        String first =
                Words.say(Recall.places(places.stream().distinct().limit(MOST_PLACES).toList()));
        long more = places.stream().distinct().count() - MOST_PLACES;
        return more > 0 ? Words.say("counts.and-more", first, more) : first;
    }

    public String title(PartNumber part) {
        return count.found().stream()
                .filter(found -> found.part().equals(part))
                .map(BagCount.Found::title)
                .findAny()
                .orElse("");
    }

    public static String cuts(BagDifference.Entry entry) {
        return entry.cutsMm().isEmpty()
                ? ""
                : " "
                        + Words.say(
                                "counts.cut-to",
                                entry.cutsMm().stream()
                                        .map(cut -> Figures.measure(cut, Unit.MILLIMETRE, 0))
                                        .collect(Collectors.joining(", ")));
    }
}
