package org.fusewright.papers;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.CountRecord.Done;
import org.fusewright.core.count.Weighing;
import org.fusewright.core.words.Unit;

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
        Headings.drawSection(sheet, sheet.say("counts.weighed"), 3 * Style.BODY.leading());
        for (Done done : weighings) {
            Weighing weighing = done.weighing();
            sheet.paragraph(Style.STRONG, sheet.say(weighing.sentence()));
            sheet.paragraph(Style.BODY, figures(done));
        }
    }

    private String figures(Done done) {
        Weighing weighing = done.weighing();
        String figures =
                sheet.say(
                        "print.weighed.figures",
                        done.by(),
                        Moments.of(done.at(), sheet.wording()),
                        grams(weighing.grossG()),
                        grams(weighing.tareG()),
                        grams(weighing.terms().resolutionG()),
                        grams(weighing.onScale().mass().meanG()),
                        grams(weighing.onScale().mass().scatterG()));
        return weighing.offScale().isEmpty()
                ? figures
                : figures + " " + sheet.say("print.weighed.off-scale", offScale(weighing));
    }

    private String grams(double massG) {
        return sheet.figures().measure(massG, Unit.GRAM);
    }

    private static String offScale(Weighing weighing) {
        return weighing.offScale().stream()
                .map(PartNumber::value)
                .collect(Collectors.joining(", "));
    }
}
