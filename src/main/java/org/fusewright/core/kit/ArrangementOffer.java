package org.fusewright.core.kit;

import org.fusewright.core.job.ArrangementKind;
import org.joda.money.BigMoney;

import java.util.List;

/**
 * One way to arrange a job's blocks, for the owner to pick.
 *
 * @param kinds what it is best in; at least one
 * @param cost as of {@link Kit.Fit}
 * @param optimal whether it is proven the best of its first kind
 * @param picked whether the job asks for it
 * @param free positions that stay free
 * @param busiestA current for each position of the block that has most
 * @param priced whether the cost is told; else it is zero
 */
public record ArrangementOffer(
        List<ArrangementKind> kinds,
        BigMoney cost,
        boolean optimal,
        boolean picked,
        List<KitBlock> blocks,
        int free,
        double busiestA,
        boolean priced) {

    public ArrangementOffer {
        kinds = List.copyOf(kinds);
        blocks = List.copyOf(blocks);
    }

    /** For those who may not see prices. */
    public ArrangementOffer withoutPrice() {
        return new ArrangementOffer(
                kinds,
                BigMoney.zero(cost.getCurrencyUnit()),
                optimal,
                picked,
                blocks,
                free,
                busiestA,
                false);
    }

    public ArrangementKind kind() {
        return kinds.getFirst();
    }
}
