package org.fusewright.counts;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.Comparison.Found;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.Comparison.State;
import org.fusewright.core.count.Substitution;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Looks for parts that are too many in a bag and may fill a line that is short. */
final class Substitutes {
    private Substitutes() {}

    static List<PossibleSubstitute> list(Comparison comparison, Catalog catalog, BagDesign design) {
        List<Found> spare =
                Stream.concat(
                                comparison.unexpected().stream(),
                                comparison.lines().stream()
                                        .filter(line -> line.state() == State.OVER)
                                        .map(
                                                line ->
                                                        new Found(
                                                                line.line().part(),
                                                                line.difference())))
                        .toList();
        List<PossibleSubstitute> possible = new ArrayList<>();
        for (LineResult line : comparison.lines()) {
            if (line.state() == State.SHORT) {
                for (Found found : spare) {
                    judge(line, found.part(), catalog, design)
                            .filter(Substitution::allowed)
                            .ifPresent(
                                    allowed ->
                                            possible.add(
                                                    new PossibleSubstitute(
                                                            line.line().part(),
                                                            found.part(),
                                                            line.difference()
                                                                    .negate()
                                                                    .min(found.quantity())
                                                                    .intValue(),
                                                            allowed.sentence())));
                }
            }
        }
        return possible;
    }

    /** Empty when the catalog does not know one of the two any more. */
    static Optional<Substitution> judge(
            LineResult line, PartNumber offered, Catalog catalog, BagDesign design) {
        Optional<Part> wantedPart = catalog.findPart(line.line().part());
        Optional<Part> offeredPart = catalog.findPart(offered);
        return wantedPart.isEmpty() || offeredPart.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Substitution.judge(
                                line.line(), wantedPart.get(), offeredPart.get(), design));
    }
}
