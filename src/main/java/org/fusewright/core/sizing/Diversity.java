package org.fusewright.core.sizing;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Optional;

/**
 * How much of what hangs on a feed is drawn at the same time: a share of the sum of all running
 * currents, but never less than the largest circuit alone. IEC 61439 calls the share the rated
 * diversity factor (from memory); its size is the shop's to judge (common practice).
 *
 * @param share above 0, at most 1
 * @param connectedA sum of everything behind the feed
 * @param largestA the most that one device behind it, or one relay coil, carries
 */
record Diversity(double share, double connectedA, double largestA) {

    /** What the feed carries while all runs that ever runs at the same time. */
    double drawnA() {
        return share == 1 ? connectedA : Math.max(share * connectedA, largestA);
    }

    /** What the others draw while a part of what is connected starts. */
    double besideA(double startingA) {
        return share * Math.max(0, connectedA - startingA);
    }

    /** Which part of what is connected counts; empty when all of it does. */
    Optional<Text> explained() {
        if (share == 1) {
            return Optional.empty();
        }
        return Optional.of(
                Phrase.of(
                        drawnA() > share * connectedA ? "diversity.largest" : "diversity.share",
                        Amount.amps(drawnA()),
                        Amount.amps(connectedA),
                        Amount.percent(100 * share)));
    }

    /** A check of the drawn current that also says how it came about. */
    Check told(Check check) {
        return explained()
                .map(
                        sentence ->
                                new Check(
                                        check.code(),
                                        check.subject(),
                                        check.value(),
                                        check.limit(),
                                        check.unit(),
                                        check.margin(),
                                        check.verdict(),
                                        Text.sentences(List.of(check.says(), sentence)),
                                        new Basis(
                                                Phrase.of(
                                                        "basis.diversity", check.basis().text()))))
                .orElse(check);
    }
}
