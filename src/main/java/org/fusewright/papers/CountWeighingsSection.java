package org.fusewright.papers;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.CountRecord.Done;
import org.fusewright.core.count.Weighing;

import java.util.List;
import java.util.stream.Collectors;

/** What the scale showed, and how much that says. */
final class CountWeighingsSection {

    private final Sheet sheet;
    private final List<Done> weighings;

    CountWeighingsSection(Sheet sheet, List<Done> weighings) {
        this.sheet = sheet;
        this.weighings = weighings;
    }

    void print() {
        if (weighings.isEmpty()) {
            return;
        }
        Headings.drawSection(sheet, "Weighed", 3 * Style.BODY.leading());
        for (Done done : weighings) {
            Weighing weighing = done.weighing();
            sheet.paragraph(Style.STRONG, weighing.sentence().english());
            sheet.paragraph(
                    Style.BODY,
                    ("%s on %s: %s g full, %s g empty, on a scale with steps of %s g. Expected"
                                    + " %s g, of which the parts may be off by %s g (one standard"
                                    + " deviation).%s")
                            .formatted(
                                    done.by(),
                                    Moments.of(done.at()),
                                    Figures.of(weighing.grossG()),
                                    Figures.of(weighing.tareG()),
                                    Figures.of(weighing.terms().resolutionG()),
                                    Figures.of(weighing.onScale().mass().meanG()),
                                    Figures.of(weighing.onScale().mass().scatterG()),
                                    offScale(weighing)));
        }
    }

    private static String offScale(Weighing weighing) {
        return weighing.offScale().isEmpty()
                ? ""
                : weighing.offScale().stream()
                        .map(PartNumber::value)
                        .collect(
                                Collectors.joining(", ", " Counted by hand, off the scale: ", "."));
    }
}
