package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.job.Feed;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Optional;

/**
 * A feed with its main device and leads chosen.
 *
 * @param runningA what it carries: the share of {@code connectedA} that is drawn at once
 * @param connectedA sum of its circuits' running currents and of the relay coils that it switches
 * @param remains what it leaves of the battery's voltage; empty when nothing hangs on it
 * @param mainDevice empty, as is the holder, when nothing hangs on the feed
 */
public record SizedFeed(
        Feed feed,
        double runningA,
        double connectedA,
        Optional<RemainingVoltage> remains,
        Optional<Device> mainDevice,
        Optional<Holder> holder,
        List<Lead> leads,
        List<SizedSplice> splices,
        List<Text> why) {

    public SizedFeed {
        leads = List.copyOf(leads);
        splices = List.copyOf(splices);
        why = List.copyOf(why);
    }

    public String id() {
        return feed.id();
    }
}
