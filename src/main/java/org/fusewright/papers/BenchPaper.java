package org.fusewright.papers;

import org.fusewright.core.kit.Kit;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/** The papers that a bench works from. The same kit on the same sheet gives the same bytes. */
public enum BenchPaper {
    KIT_LIST("kit-list", "Kit list", KitListPaper::print),
    ASSEMBLY_SHEET("assembly-sheet", "Assembly sheet", AssemblySheetPaper::print),
    LID_LEGEND("lid-legend", "Lid legend", LidLegendPaper::print),
    CUT_LIST("cut-list", "Cut list", CutListPaper::print),
    BAG_LABEL("bag-label", "Bag label", BagLabelPaper::print),
    PART_LABELS("part-labels", "Part labels", PartLabelsPaper::print);

    private final String code;
    private final String title;
    private final BiConsumer<Sheet, Kit> printer;

    BenchPaper(String code, String title, BiConsumer<Sheet, Kit> printer) {
        this.code = code;
        this.title = title;
        this.printer = printer;
    }

    /** The paper of a code such as "kit-list". */
    public static Optional<BenchPaper> parse(String code) {
        return Stream.of(values()).filter(paper -> paper.code.equals(code)).findFirst();
    }

    public String code() {
        return code;
    }

    public String title() {
        return title;
    }

    /**
     * Prints as PDF.
     *
     * @param revision of the job that the kit was planned from; empty for one that is not kept
     */
    public byte[] print(Kit kit, OptionalInt revision, Paper paper) {
        Sheet sheet = new Sheet(paper, KitHeading.of(title, kit, revision), kit.fingerprint());
        printer.accept(sheet, kit);
        return sheet.close();
    }
}
