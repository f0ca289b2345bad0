package org.fusewright.papers;

import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The label of the bag that a kit leaves in: what it is, and a code that a scanner reads. */
final class BagLabelPaper {

    private static final float WIDTH = Style.mm(150);
    private static final float HEIGHT = Style.mm(76);
    private static final float PAD = Style.mm(5);
    private static final float LARGEST = 20;
    private static final float SMALLEST = 7;
    private static final float FACTS_HEIGHT = Style.mm(18);
    private static final float LARGEST_FACTS = 10;

    private BagLabelPaper() {}

    static void print(Sheet sheet, Kit kit) {
        new StatusSection(sheet, kit).print();
        Headings.drawSection(
                sheet, sheet.say("paper.bag-label"), 2 * Style.BODY.leading() + HEIGHT);
        sheet.paragraph(Style.BODY, sheet.say("print.label.cut-at-marks"));
        sheet.down(2 * CropMarks.REACH);
        draw(sheet, kit, sheet.left() + (sheet.width() - WIDTH) / 2, sheet.y());
        sheet.down(HEIGHT + 2 * CropMarks.REACH);
        new CautionsSection(sheet).print();
    }

    /** What the code says: the job, its revision (nothing for a job not kept) and the design. */
    static String content(Kit kit, KitHeading heading) {
        String revision =
                heading.revision().isPresent()
                        ? Integer.toString(heading.revision().getAsInt())
                        : "";
        return String.join(
                "|",
                "FW1",
                kit.job().reference(),
                revision,
                KitHeading.shortened(kit.fingerprint()));
    }

    private static void draw(Sheet sheet, Kit kit, float left, float top) {
        Pen pen = sheet.pen();
        CropMarks.draw(pen, left, top, WIDTH, HEIGHT);
        float room = WIDTH - 2 * PAD;
        FittedText facts =
                FittedText.fit(facts(sheet, kit), room, FACTS_HEIGHT, LARGEST_FACTS, SMALLEST);
        Optional<BarCode> code = BarCode.of(content(kit, sheet.heading()), room);
        float codeHeight = code.map(BarCode::height).orElse(Style.SMALL.leading());
        float codeTop = top - HEIGHT + PAD + codeHeight;
        float factsTop = codeTop + PAD / 2 + facts.height();
        facts.draw(pen, left + PAD, factsTop);
        FittedText.fit(names(kit), room, top - PAD - factsTop - PAD / 2, LARGEST, SMALLEST)
                .draw(pen, left + PAD, top - PAD);
        code.ifPresentOrElse(
                bars -> bars.draw(pen, left + (WIDTH - bars.width()) / 2, codeTop),
                () ->
                        FittedText.fit(
                                        List.of(
                                                FittedText.Passage.plain(
                                                        sheet.say("print.bag-label.no-code"))),
                                        room,
                                        codeHeight + PAD / 2,
                                        Style.SMALL.size(),
                                        6)
                                .draw(pen, left + PAD, codeTop));
    }

    private static List<FittedText.Passage> names(Kit kit) {
        return List.of(
                FittedText.Passage.strong(kit.job().reference()),
                FittedText.Passage.strong(kit.job().title()),
                FittedText.Passage.plain(kit.job().customer()));
    }

    private static List<FittedText.Passage> facts(Sheet sheet, Kit kit) {
        KitHeading heading = sheet.heading();
        List<FittedText.Passage> facts = new ArrayList<>();
        if (kit.worst() == Verdict.FAIL) {
            facts.add(FittedText.Passage.strong(sheet.say("print.status.fail")));
        }
        long spares = kit.parts().stream().filter(line -> line.group() == PartGroup.SPARE).count();
        Amount mass = new Amount(Math.round(kit.totals().massG()), Unit.GRAM, 0);
        int lines = kit.parts().size();
        facts.add(
                FittedText.Passage.plain(
                        spares > 0
                                ? sheet.say("print.bag-label.with-spares", lines, spares, mass)
                                : sheet.say("print.bag-label.lines", lines, mass)));
        facts.add(
                FittedText.Passage.plain(
                        heading.revision().isPresent()
                                ? sheet.say(
                                        "print.frame.revision-of", heading.revision().getAsInt())
                                : ""));
        facts.add(
                FittedText.Passage.plain(
                        sheet.say("print.frame.fingerprint-of", heading.shortFingerprint())));
        return facts;
    }
}
