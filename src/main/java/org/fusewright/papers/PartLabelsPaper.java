package org.fusewright.papers;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;

import java.util.List;
import java.util.Optional;

/** A label for each line of the parts list, its number as a code that a scanner reads. */
final class PartLabelsPaper {

    private static final float HEIGHT = Style.mm(37);
    private static final float PAD = Style.mm(3);
    private static final float NUMBER_HEIGHT = 16;
    private static final float LARGEST_NUMBER = 12;
    private static final float LARGEST = 9;
    private static final float SMALLEST = 6;
    private static final Lettering QUANTITY = new Lettering(PaperFont.BOLD, LARGEST_NUMBER);

    private final Sheet sheet;
    private final Kit kit;

    private PartLabelsPaper(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    static void print(Sheet sheet, Kit kit) {
        new PartLabelsPaper(sheet, kit).print();
    }

    private void print() {
        new StatusSection(sheet, kit).print();
        new CautionsSection(sheet).print();
        Headings.drawSection(
                sheet, sheet.say("paper.part-labels"), 2 * Style.BODY.leading() + HEIGHT);
        if (kit.parts().isEmpty()) {
            sheet.paragraph(Style.BODY, sheet.say("print.parts.none"));
            return;
        }
        sheet.paragraph(Style.BODY, sheet.say("print.part-label.use"));
        sheet.down(PAD / 2);
        LabelGrid grid = new LabelGrid(sheet, HEIGHT);
        for (PartLine line : kit.parts()) {
            String number = line.part().number().value();
            if (BarCode.of(number, grid.width() - 2 * PAD).isPresent()) {
                grid.add((pen, left, top, width) -> draw(pen, left, top, width, line));
            } else {
                grid.addWide((pen, left, top, width) -> draw(pen, left, top, width, line));
            }
        }
        grid.end();
    }

    private void draw(Pen pen, float left, float top, float width, PartLine line) {
        float room = width - 2 * PAD;
        float x = left + PAD;
        String number = line.part().number().value();
        String quantity = quantity(line);
        pen.textRight(QUANTITY, quantity, x + room, top - PAD - QUANTITY.ascent());
        FittedText.fit(
                        List.of(FittedText.Passage.strong(number)),
                        room - QUANTITY.width(quantity) - PAD,
                        NUMBER_HEIGHT,
                        LARGEST_NUMBER,
                        SMALLEST)
                .draw(pen, x, top - PAD);

        Optional<BarCode> code = BarCode.of(number, room);
        float codeHeight = code.map(BarCode::height).orElse(Style.SMALL.leading());
        float codeTop = top - HEIGHT + PAD / 2 + codeHeight;
        code.ifPresentOrElse(
                bars -> bars.draw(pen, left, codeTop),
                () ->
                        pen.text(
                                Style.SMALL,
                                sheet.say("print.part-label.no-code"),
                                x,
                                codeTop - Style.SMALL.ascent()));

        float textTop = top - PAD - NUMBER_HEIGHT;
        FittedText.fit(words(line), room, textTop - codeTop - PAD / 2, LARGEST, SMALLEST)
                .draw(pen, x, textTop);
    }

    private String quantity(PartLine line) {
        String quantity = sheet.figures().quantity(line);
        if (line.unit().equals("m")) {
            return quantity;
        }
        return quantity.equals("1")
                ? sheet.say("print.part-label.pieces.one", quantity)
                : sheet.say("print.part-label.pieces.other", quantity);
    }

    private List<FittedText.Passage> words(PartLine line) {
        String places = Places.compact(line.usedAt(), sheet.wording());
        return List.of(
                FittedText.Passage.plain(line.part().title()),
                FittedText.Passage.plain(
                        sheet.say(
                                line.group() == PartGroup.SPARE
                                        ? "print.part-label.spare"
                                        : "print.part-label.goes-to",
                                places)),
                FittedText.Passage.plain(
                        sheet.heading().referenceAndRevision(sheet.wording())
                                + " · "
                                + sheet.heading().shortFingerprint()));
    }
}
