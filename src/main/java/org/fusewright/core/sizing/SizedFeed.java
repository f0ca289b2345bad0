package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.job.Feed;

import java.util.List;
import java.util.Optional;

/**
 * A feed with its main device and leads chosen.
 *
 * @param runningA sum of its circuits' running currents and of the relay coils that it switches
 * @param mainDevice empty, as is the holder, when nothing hangs on the feed
 */
public record SizedFeed(
        Feed feed,
        double runningA,
        Optional<Device> mainDevice,
        Optional<Holder> holder,
        List<Lead> leads,
        List<SizedSplice> splices,
        List<String> why) {

    public SizedFeed {
        leads = List.copyOf(leads);
        splices = List.copyOf(splices);
        why = List.copyOf(why);
    }

    public String id() {
        return feed.id();
    }
}
