package org.fusewright.papers;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Wording;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/**
 * The papers that a bench works from. The same kit on the same sheet in the same wording gives the
 * same bytes.
 */
public enum BenchPaper {
    KIT_LIST("kit-list", KitListPaper::print),
    ASSEMBLY_SHEET("assembly-sheet", AssemblySheetPaper::print),
    LID_LEGEND("lid-legend", LidLegendPaper::print),
    CUT_LIST("cut-list", CutListPaper::print),
    BAG_LABEL("bag-label", BagLabelPaper::print),
    PART_LABELS("part-labels", PartLabelsPaper::print);

    private final String code;
    private final BiConsumer<Sheet, Kit> printer;

    BenchPaper(String code, BiConsumer<Sheet, Kit> printer) {
        this.code = code;
        this.printer = printer;
    }

    /** The paper of a code such as "kit-list". */
    public static Optional<BenchPaper> parse(String code) {
        return Stream.of(values()).filter(paper -> paper.code.equals(code)).findFirst();
    }

    public String code() {
        return code;
    }

    /** What its reader calls it. */
    public String title(Wording wording) {
        return wording.say("paper." + code);
    }

    /**
     * Prints as PDF.
     *
     * @param revision of the job that the kit was planned from; empty for one that is not kept
     * @param wording how its reader is spoken to
     */
    public byte[] print(Kit kit, OptionalInt revision, Paper paper, Wording wording) {
        KitHeading heading = KitHeading.of(title(wording), kit, revision);
        Sheet sheet = new Sheet(paper, wording, heading, kit.fingerprint());
        printer.accept(sheet, kit);
        return sheet.close();
    }
}
