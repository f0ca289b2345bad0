package org.fusewright.jobs.web;

import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.kit.ArrangementOffer;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.jobs.StoredJob;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The arrangements of a job's blocks as the page compares them. */
public record ArrangementsView(StoredJob job, List<ArrangementOffer> offers) {

    /** What a kind is best in, in words. */
    public static String word(ArrangementKind kind) {
        return switch (kind) {
            case CHEAPEST -> "cheapest";
            case FEWEST_BLOCKS -> "fewest blocks";
            case MOST_SPARE -> "most spare positions";
            case COOLEST -> "coolest";
            case ONE_BLOCK_TYPE -> "one type of block";
        };
    }

    public static String words(List<ArrangementKind> kinds) {
        return kinds.stream().map(ArrangementsView::word).collect(Collectors.joining(", "));
    }

    /** Such as "2 × A-4 with cap A-4-LOW". */
    public static String blocks(ArrangementOffer offer) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (KitBlock block : offer.blocks()) {
            counts.merge(
                    block.block().number() + " with cap " + block.cap().number(), 1, Integer::sum);
        }
        return counts.entrySet().stream()
                .map(count -> count.getValue() + " × " + count.getKey())
                .collect(Collectors.joining(", "));
    }
}
