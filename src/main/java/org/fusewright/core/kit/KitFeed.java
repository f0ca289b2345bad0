package org.fusewright.core.kit;

import java.util.List;
import org.fusewright.core.sizing.SizedFeed;

/** A feed as sized, its leads' ends found. */
public record KitFeed(SizedFeed sized, List<KitLead> leads) {

    public KitFeed {
        leads = List.copyOf(leads);
    }
}
