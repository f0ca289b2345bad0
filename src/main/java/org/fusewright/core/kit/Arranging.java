package org.fusewright.core.kit;

import org.fusewright.core.fitting.Alternatives;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.Fitter;
import org.fusewright.core.job.ArrangementKind;

import java.util.Optional;

/** The arrangement of a job's blocks that the shop picked, and the cheapest to hold it against. */
record Arranging(
        FittingModel model, Arrangement cheapest, Arrangement picked, ArrangementKind kind) {

    /** When what was picked cannot be had, the cheapest. */
    static Arranging of(FittingModel model, ArrangementKind asked) {
        Arrangement cheapest = Fitter.fit(model.task());
        Optional<Arrangement> picked = find(model, cheapest, asked);
        return new Arranging(
                model,
                cheapest,
                picked.orElse(cheapest),
                picked.isPresent() ? asked : ArrangementKind.CHEAPEST);
    }

    static Optional<Arrangement> find(
            FittingModel model, Arrangement cheapest, ArrangementKind kind) {
        Alternatives others = new Alternatives(model.task(), cheapest);
        return switch (kind) {
            case CHEAPEST -> Optional.of(cheapest);
            case FEWEST_BLOCKS -> Optional.of(others.fewestBlocks());
            case MOST_SPARE -> Optional.of(others.mostSpare());
            case COOLEST -> Optional.of(others.coolest());
            case ONE_BLOCK_TYPE -> others.oneBlockType();
        };
    }
}
