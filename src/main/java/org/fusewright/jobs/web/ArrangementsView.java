package org.fusewright.jobs.web;

import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.kit.ArrangementOffer;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.jobs.StoredJob;
import org.fusewright.web.Words;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The arrangements of a job's blocks as the page compares them. */
public record ArrangementsView(StoredJob job, List<ArrangementOffer> offers) {

    /** What a kind is best in, in words. */
    public static String word(ArrangementKind kind) {
        return Words.say("arrangement." + kind.code());
    }

    public static String words(List<ArrangementKind> kinds) {
        return kinds.stream().map(ArrangementsView::word).collect(Collectors.joining(", "));
    }

    /** Such as "2 × A-4 with cap A-4-LOW". */
    public static String blocks(ArrangementOffer offer) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (KitBlock block : offer.blocks()) {
            counts.merge(
                    Words.say(
                            "arrangements.with-cap", block.block().number(), block.cap().number()),
                    1,
                    Integer::sum);
        }
        return counts.entrySet().stream()
                .map(count -> count.getValue() + " × " + count.getKey())
                .collect(Collectors.joining(", "));
    }
}
