package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.OptionalInt;

class PartLabelsPaperTest {

    static List<Kit> samples() {
        return PlannedKits.listSamples();
    }

    /** The number twice: in large letters, and below the code that holds it. */
    @ParameterizedTest
    @MethodSource("samples")
    void saysNumberQuantityTitleAndPlaceOfEachLine(Kit kit) {
        byte[] pdf =
                BenchPaper.PART_LABELS.print(kit, OptionalInt.of(4), Paper.A4, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            String text = printed.denseText();
            int from = text.indexOf("Partlabels", 20);
            for (PartLine line : kit.parts()) {
                String start = quantity(line) + line.part().number();
                int at = text.indexOf(start, from);
                assertThat(at).as(start).isPositive();
                from = at;
                assertThat(text.substring(at))
                        .startsWith(
                                start
                                        + line.part().number()
                                        + PrintedPaper.dense(line.part().title()))
                        .containsPattern("^.{0,400}(Goesto|standsinfor).{0,300},revision4·");
            }
        }
    }

    private static String quantity(PartLine line) {
        if (line.unit().equals("m")) {
            return "m";
        }
        String pieces = line.quantity().toBigIntegerExact().toString();
        return pieces + (pieces.equals("1") ? "pc" : "pcs");
    }
}
