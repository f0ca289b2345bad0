package org.fusewright.core.kit;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Job;
import org.joda.money.BigMoney;
import org.joda.money.Money;

import java.util.List;

/**
 * Everything that a job needs, where it goes, what was checked and what it costs the shop.
 *
 * @param catalogVersion the catalog that it was planned from
 * @param fingerprint names this design: equal for equal job and catalog
 * @param fit what the set of blocks costs and whether that is proven least
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
        Totals totals) {

    /** Cost of blocks, caps, wedges and plugs, and the least that any set could cost. */
    public record Fit(BigMoney cost, BigMoney lowerBound, boolean optimal) {}

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
}
