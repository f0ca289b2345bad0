package org.fusewright.core.kit;

import org.fusewright.core.fitting.Alternatives;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.KnownDiscounts;
import org.fusewright.core.fitting.PlacedBlock;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Choices;
import org.fusewright.core.kit.Arranging.Arranged;
import org.fusewright.core.sizing.SizedJob;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The arrangements that are worth comparing: one of each kind, those that look alike as one. */
final class ArrangementOffers {

    /**
     * What a shop would tell arrangements apart by: blocks by location, and the busiest of them.
     */
    private record Looks(Map<String, Integer> blocks, long busiestTenthA) {

        static Looks of(Arrangement arrangement, FittingTask task) {
            Map<String, Integer> blocks = new LinkedHashMap<>();
            arrangement.blocks().stream()
                    .map(ArrangementOffers::name)
                    .sorted()
                    .forEach(name -> blocks.merge(name, 1, Integer::sum));
            double busiestA = Alternatives.busiestA(arrangement, task);
            return new Looks(blocks, Math.round(busiestA * 10));
        }
    }

    private record Found(Arranged arranged, List<ArrangementKind> kinds) {}

    private ArrangementOffers() {}

    private static String name(PlacedBlock block) {
        return block.location() + "/" + block.form().block() + "/" + block.form().cap();
    }

    static List<ArrangementOffer> list(
            FittingModel model, SizedJob sized, Choices choices, KnownDiscounts known) {
        FittingTask task = model.task();
        Arranging arranging = Arranging.of(model, sized, known);
        Map<Looks, Found> found = new LinkedHashMap<>();
        for (ArrangementKind kind : ArrangementKind.values()) {
            arranging
                    .find(kind)
                    .filter(one -> !one.blocks().isEmpty())
                    .ifPresent(
                            one ->
                                    found.computeIfAbsent(
                                                    Looks.of(one.arrangement(), task),
                                                    l -> new Found(one, new ArrayList<>()))
                                            .kinds()
                                            .add(kind));
        }
        List<ArrangementOffer> offers = new ArrayList<>();
        for (Found one : found.values()) {
            Arrangement arrangement = one.arranged.arrangement();
            offers.add(
                    new ArrangementOffer(
                            one.kinds(),
                            model.money(arrangement.costMicros()),
                            arrangement.optimal(),
                            one.kinds().contains(choices.arrangement()),
                            one.arranged.blocks(),
                            Alternatives.free(arrangement, task),
                            Alternatives.busiestA(arrangement, task),
                            true));
        }
        return offers;
    }
}
