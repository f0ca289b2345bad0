package org.fusewright.core.kit;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Job;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Price;
import org.fusewright.core.words.Text;
import org.joda.money.BigMoney;
import org.joda.money.Money;

import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Everything that a job needs, where it goes, what was checked and what it costs the shop.
 *
 * @param catalogVersion the catalog that it was planned from
 * @param fingerprint names this design: equal for equal job and catalog
 * @param fit what the set of blocks costs and whether that is proven least
 * @param priced whether it tells what it costs; else all its prices are zero
 */
public record Kit(
        Job job,
        String catalogVersion,
        String fingerprint,
        List<KitCircuit> circuits,
        List<KitFeed> feeds,
        List<KitBlock> blocks,
        Fit fit,
        List<Check> checks,
        List<PartLine> parts,
        List<WireLine> wire,
        Totals totals,
        boolean priced) {

    /**
     * How the blocks were found.
     *
     * @param cost of blocks, caps, wedges and plugs by the piece, less what bagged sets save on the
     *     kit
     * @param lowerBound proven: no arrangement of this kind costs less
     * @param kind what the arrangement is best in
     * @param why these blocks and not others, in sentences
     * @param moved what was wired elsewhere
     */
    public record Fit(
            BigMoney cost,
            BigMoney lowerBound,
            boolean optimal,
            ArrangementKind kind,
            List<Text> why,
            List<Move> moved) {

        public Fit {
            why = List.copyOf(why);
            moved = List.copyOf(moved);
        }

        private Fit withoutPrices() {
            BigMoney none = BigMoney.zero(cost.getCurrencyUnit());
            return new Fit(none, none, optimal, kind, FittingWords.withoutPrices(why), moved);
        }

        /** How far the cost is proven, in a sentence. */
        public Text proof() {
            if (optimal) {
                return kind == ArrangementKind.CHEAPEST
                        ? Phrase.of("fit.proven-cheapest")
                        : Phrase.of("fit.proven-of-its-kind");
            }
            BigMoney gap = cost.minus(lowerBound);
            if (gap.isZero()) {
                return Phrase.of("fit.not-proven-unpriced");
            }
            return Phrase.of(
                    "fit.not-proven",
                    new Price(
                            gap.rounded(2, RoundingMode.UP).getAmount().setScale(2),
                            cost.getCurrencyUnit().getCode()));
        }
    }

    /**
     * A device or relay that sits elsewhere than where it was wired.
     *
     * @param from as the job names it, such as "B1-2"
     * @param to as the drawing names it; {@link #NOWHERE} when no block takes it
     */
    public record Move(String circuit, boolean relay, String from, Text to) {

        /** Where a part sits that no block takes. */
        public static final Text NOWHERE = Phrase.of("fit.no-block");

        /** In words, such as "relay of pump from B1-3 to B2-1". */
        public Text says() {
            return relay
                    ? Phrase.of("fit.moved-relay", circuit, from, to)
                    : Phrase.of("fit.moved-device", circuit, from, to);
        }
    }

    /** Sums over the parts list. */
    public record Totals(Money parts, double massG) {}

    public Kit {
        circuits = List.copyOf(circuits);
        feeds = List.copyOf(feeds);
        blocks = List.copyOf(blocks);
        checks = List.copyOf(checks);
        parts = List.copyOf(parts);
        wire = List.copyOf(wire);
    }

    /** With its prices. */
    public Kit(
            Job job,
            String catalogVersion,
            String fingerprint,
            List<KitCircuit> circuits,
            List<KitFeed> feeds,
            List<KitBlock> blocks,
            Fit fit,
            List<Check> checks,
            List<PartLine> parts,
            List<WireLine> wire,
            Totals totals) {
        this(
                job,
                catalogVersion,
                fingerprint,
                circuits,
                feeds,
                blocks,
                fit,
                checks,
                parts,
                wire,
                totals,
                true);
    }

    /**
     * The same kit for those who may not see prices: no figure and no sentence of it tells one.
     * What it still shows is which choice was cheaper.
     */
    public Kit withoutPrices() {
        return new Kit(
                job,
                catalogVersion,
                fingerprint,
                circuits,
                feeds,
                blocks,
                fit.withoutPrices(),
                checks,
                parts.stream().map(PartLine::withoutPrice).toList(),
                wire,
                new Totals(Money.zero(totals.parts().getCurrencyUnit()), totals.massG()),
                false);
    }

    /** Whether no check fails. */
    public boolean isBuildable() {
        return worst() != Verdict.FAIL;
    }

    /** The worst verdict of all checks. */
    public Verdict worst() {
        Verdict worst = Verdict.PASS;
        for (Check check : checks) {
            worst = check.verdict().compareTo(worst) > 0 ? check.verdict() : worst;
        }
        return worst;
    }

    /** All leads: those of the feeds, then circuit by circuit. */
    public Stream<KitLead> leads() {
        return Stream.concat(
                        feeds.stream().map(KitFeed::leads),
                        circuits.stream().map(KitCircuit::leads))
                .flatMap(List::stream);
    }

    public Optional<KitCircuit> findCircuit(String id) {
        return circuits.stream().filter(circuit -> circuit.sized().id().equals(id)).findFirst();
    }

    public Optional<KitFeed> findFeed(String id) {
        return feeds.stream().filter(feed -> feed.sized().id().equals(id)).findFirst();
    }
}
