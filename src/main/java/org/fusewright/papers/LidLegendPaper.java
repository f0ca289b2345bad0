package org.fusewright.papers;

import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The labels for the caps, at full size with marks to cut at, and what they say in full. */
final class LidLegendPaper {

    private static final double USUAL_HEIGHT_MM = 30;
    private static final float BELOW_SIZE = 4;
    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("print.column.position", 13),
                    Table.Column.left("print.column.circuit", 62),
                    Table.Column.left("print.legend.rating-and-colour", 40),
                    Table.Column.left("print.column.kind", 40));

    private final Sheet sheet;
    private final Kit kit;
    private final Devices devices;
    private final Map<String, String> titles;

    private LidLegendPaper(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        devices = new Devices(sheet);
        titles =
                kit.job().circuits().stream()
                        .collect(Collectors.toMap(Circuit::id, Circuit::title));
    }

    static void print(Sheet sheet, Kit kit) {
        new LidLegendPaper(sheet, kit).print();
    }

    private void print() {
        new StatusSection(sheet, kit).print();
        new CautionsSection(sheet).print();
        Headings.drawSection(sheet, sheet.say("print.legend.title"), 4 * Style.BODY.leading());
        if (kit.blocks().isEmpty()) {
            sheet.paragraph(Style.BODY, sheet.say("print.blocks.none"));
            return;
        }
        sheet.paragraph(Style.BODY, sheet.say("print.legend.use"));
        kit.blocks().forEach(this::printBlock);
    }

    private void printBlock(KitBlock block) {
        List<LegendLabel.Field> fields = fields(block);
        double widthMm = labelWidthMm(block);
        double heightMm = block.cap().labelHeightMm().orElse(USUAL_HEIGHT_MM);
        List<LegendLabel> labels =
                LegendLabel.listFor(
                        block,
                        fields,
                        sheet.say("print.legend.side"),
                        foot(block),
                        Style.mm(widthMm),
                        Style.mm(heightMm),
                        sheet.width() - 2 * CropMarks.REACH);
        Table.Heading heading = Headings.group(sheet, block.id() + " · " + block.location());
        String size = size(block, labels.size(), widthMm, heightMm);
        float above = heading.height() + 2 * Style.SMALL.leading() + BELOW_SIZE;
        sheet.keep(above + labels.getFirst().heightWithMarks());
        heading.draw(false);
        sheet.paragraph(Style.SMALL, size);
        sheet.down(BELOW_SIZE);
        for (LegendLabel label : labels) {
            sheet.keep(label.heightWithMarks());
            label.draw(sheet.pen(), sheet.left() + CropMarks.REACH, sheet.y() - CropMarks.REACH);
            sheet.down(label.heightWithMarks());
        }
        printInFull(block, fields);
    }

    private static double labelWidthMm(KitBlock block) {
        OptionalDouble given = block.cap().labelWidthMm();
        return given.orElse(block.block().positions() * block.block().pitchMm());
    }

    private String size(KitBlock block, int pieces, double widthMm, double heightMm) {
        Figures figures = sheet.figures();
        String size =
                sheet.say(
                        pieces > 1 ? "print.legend.size-in-pieces" : "print.legend.size",
                        block.cap().number(),
                        figures.measure(widthMm, Unit.MILLIMETRE),
                        figures.measure(heightMm, Unit.MILLIMETRE),
                        pieces);
        return block.cap().labelWidthMm().isPresent()
                ? size
                : sheet.say("print.legend.no-size") + " " + size;
    }

    private String foot(KitBlock block) {
        return block.id() + " · " + sheet.heading().referenceAndRevision(sheet.wording());
    }

    private List<LegendLabel.Field> fields(KitBlock block) {
        List<LegendLabel.Field> fields = new ArrayList<>();
        for (int position = 1; position <= block.block().positions(); position++) {
            fields.add(field(block, position));
        }
        return fields.stream().distinct().toList();
    }

    /** A relay's two positions give the same field twice. */
    private LegendLabel.Field field(KitBlock block, int position) {
        return block.seats().stream()
                .filter(seat -> seat.positions().contains(position))
                .findFirst()
                .map(
                        seat ->
                                new LegendLabel.Field(
                                        seat.positions(),
                                        titles.getOrDefault(seat.circuit(), seat.circuit()),
                                        devices.rating(seat.part()),
                                        devices.kind(seat.part()),
                                        devices.colour(seat.part())))
                .orElseGet(
                        () ->
                                new LegendLabel.Field(
                                        List.of(position), sheet.say("drawing.free"), "", "", ""));
    }

    /** A colour is said in words after what it belongs to; some have none. */
    static String joined(String text, String colour) {
        return colour.isEmpty() ? text : text + ", " + colour;
    }

    private void printInFull(KitBlock block, List<LegendLabel.Field> fields) {
        Table table =
                new Table(
                        sheet,
                        Headings.group(sheet, sheet.say("print.legend.in-full", block.id())),
                        COLUMNS);
        table.keepTogether(Math.min(fields.size(), 8));
        for (LegendLabel.Field field : fields) {
            table.row(
                    Cell.of(Style.STRONG, field.positionsInWords()),
                    Cell.of(field.name()),
                    Cell.of(joined(field.rating(), field.colour())),
                    Cell.of(field.kind()));
        }
    }
}
