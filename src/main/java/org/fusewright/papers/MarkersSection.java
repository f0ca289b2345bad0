package org.fusewright.papers;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.WireLine;

import java.util.List;

/**
 * A flag for each end of each lead, in the order of the cut list: the same text on both halves, and
 * between them what goes round the lead.
 */
final class MarkersSection {

    private static final float HEIGHT = Style.mm(15);
    private static final float AROUND = Style.mm(12);
    private static final float PAD = Style.mm(1.2);
    private static final float LARGEST = 8;
    private static final float SMALLEST = 5.5f;
    private static final float[] FOLD = {1, 2};
    private static final String HERE = "● ";

    private final Sheet sheet;
    private final Kit kit;

    MarkersSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        if (kit.wire().isEmpty()) {
            return;
        }
        Headings.drawSection(
                sheet, sheet.say("print.markers.title"), 3 * Style.BODY.leading() + HEIGHT);
        sheet.paragraph(Style.BODY, sheet.say("print.markers.use"));
        sheet.down(PAD);
        LabelGrid grid = new LabelGrid(sheet, HEIGHT);
        for (WireLine line : kit.wire()) {
            for (KitLead lead : line.leads()) {
                grid.add((pen, left, top, width) -> draw(pen, left, top, width, lead, true));
                grid.add((pen, left, top, width) -> draw(pen, left, top, width, lead, false));
            }
        }
        grid.end();
    }

    private void draw(Pen pen, float left, float top, float width, KitLead lead, boolean atFrom) {
        float half = (width - AROUND) / 2;
        FittedText text =
                FittedText.fit(
                        words(lead, atFrom), half - 2 * PAD, HEIGHT - 2 * PAD, LARGEST, SMALLEST);
        float second = left + half + AROUND;
        float above = (HEIGHT - text.height()) / 2;
        text.draw(pen, left + PAD, top - above);
        text.draw(pen, second + PAD, top - above);
        pen.dashed(
                FOLD,
                () -> {
                    upright(pen, left + half, top);
                    upright(pen, second, top);
                });
    }

    private static void upright(Pen pen, float x, float top) {
        pen.line(Style.HAIRLINE, Style.INK, x, top - HEIGHT, x, top);
    }

    private List<FittedText.Passage> words(KitLead lead, boolean atFrom) {
        Wire wire = lead.lead().wire();
        return List.of(
                FittedText.Passage.strong(lead.lead().id()),
                end(Places.said(lead.from(), sheet.wording()), atFrom),
                end("→ " + Places.said(lead.to(), sheet.wording()), !atFrom),
                FittedText.Passage.plain(Colours.sizeAndColour(wire, sheet)));
    }

    private static FittedText.Passage end(String text, boolean here) {
        return here ? FittedText.Passage.strong(HERE + text) : FittedText.Passage.plain(text);
    }
}
