package org.fusewright.core.pricing;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.PartNumber;

import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Covers a need of parts by bagged sets and loose pieces at least cost, exact; see {@link Bags}.
 */
public final class Covering {

    private Covering() {}

    /**
     * @param bags sets to take, and how many of each
     * @param loose pieces to add singly, by part; none of them is left over in a bag
     */
    public record Cover(
            SortedMap<PartNumber, Integer> bags, SortedMap<PartNumber, Integer> loose) {}

    /**
     * @param need pieces of each part; parts that no bag holds come back as loose
     */
    public static Cover cover(SortedMap<PartNumber, Integer> need, Stock stock) {
        Bags bags = stock.bags();
        int[] bagged = new int[bags.parts().size()];
        for (int p = 0; p < bagged.length; p++) {
            bagged[p] = need.getOrDefault(bags.parts().get(p), 0);
        }
        int[] counts = bags.cheapest(bagged);
        SortedMap<PartNumber, Integer> taken = new TreeMap<>();
        SortedMap<PartNumber, Integer> loose = new TreeMap<>(need);
        for (int s = 0; s < counts.length; s++) {
            if (counts[s] == 0) {
                continue;
            }
            BaggedSet set = bags.sets().get(s);
            taken.put(set.number(), counts[s]);
            for (BaggedSet.Content content : set.contains()) {
                int brought = counts[s] * content.quantity();
                loose.computeIfPresent(
                        content.part(), (part, open) -> open > brought ? open - brought : null);
            }
        }
        return new Cover(taken, loose);
    }
}
