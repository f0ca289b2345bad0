package org.fusewright.core.kit;

import org.fusewright.core.sizing.SizedFeed;

import java.util.List;

/** A feed as sized, its leads' ends found. */
public record KitFeed(SizedFeed sized, List<KitLead> leads) {

    public KitFeed {
        leads = List.copyOf(leads);
    }
}
